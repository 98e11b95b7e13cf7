/** Drawings keep a size at which their words can be read, and scroll sideways by themselves where that is too wide. */
export const drawingStyle = `
.chart{margin:.2rem 0 .4rem}
.drawing{display:block;font-family:var(--sans);color:var(--ink);max-width:100%;min-width:33rem;height:auto;overflow:visible}
.drawing text{white-space:pre}
.drawing.craft{min-width:46rem}
details.craft-choice{max-width:none;border-block-end:1px solid var(--hair);margin:0}
.craft-choice figure{margin:.4rem 0 1.2rem}
.craft-choice figcaption{position:absolute;inline-size:1px;block-size:1px;overflow:hidden;clip-path:inset(50%)}
.craft .part:hover path,.craft .part:focus-visible path{stroke-width:2.6px;stroke:var(--accent)}
[id*=-part-]:target{background:var(--accent-wash);outline:2px solid var(--accent)}
`;
