import { narrowScreen } from './narrow-screen.js';

/** The middle of a drawn craft with the rings beside it, of the 900 units that it is wide with its words. */
const middle = 590;

/** The places of the entries of a drawn craft's legend when they stand below one another. */
const entries = Array.from({ length: 10 }, (_, at) => {
  return `.chart>.craft .legend>g:nth-of-type(${at + 1}){transform:translate(160px,${46 + at * 31}px) scale(1.7)}`;
});

/**
 * Drawings keep a size at which their words can be read: on a small screen they are drawn narrow, and what cannot be scrolls
 * sideways by itself. A drawn craft on a small screen leaves its words to the table below it, which has them by the number in the ring.
 */
export const drawingStyle = `
.chart{margin:.2rem 0 .4rem}
.drawing{display:block;font-family:var(--sans);color:var(--ink);max-width:100%;min-width:33rem;height:auto;overflow:visible}
.drawing text{white-space:pre}
.drawing.craft{min-width:46rem}
.drawing.narrow{display:none}
.drawing.alone{min-width:0;inline-size:100%;max-inline-size:28rem}
details.craft-choice{max-width:none;border-block-end:1px solid var(--hair);margin:0}
.craft-choice figure{margin:.4rem 0 1.2rem}
.craft-choice figcaption{position:absolute;inline-size:1px;block-size:1px;overflow:hidden;clip-path:inset(50%)}
.craft .part:hover path,.craft .part:focus-visible path{stroke-width:2.6px;stroke:var(--accent)}
[id*=-part-]:target{background:var(--accent-wash);outline:2px solid var(--accent)}
@media screen and ${narrowScreen}{
.drawing.wide{display:none}
.drawing.narrow{display:block;min-width:0;inline-size:100%}
.scroll.chart:has(>.craft){overflow:visible;overflow-x:clip;background:none}
.chart>.drawing.craft{inline-size:${share(900)};max-inline-size:none;min-inline-size:0;margin-inline-start:-${share((900 - middle) / 2)};margin-block-end:${share(250)}}
.chart>.drawing.craft:has(.legend>g:nth-of-type(9)){margin-block-end:${share(281)}}
.chart>.drawing.craft:has(.legend>g:nth-of-type(10)){margin-block-end:${share(312)}}
.chart>.craft .words{display:none}
.chart>.craft .ring{font-size:22px;translate:0 3px}
.chart>.craft .label>circle{r:17px}
.chart>.craft .legend>text{font-size:21px;translate:146px 2px}
${entries.join('\n')}
}
`;

function share(units: number): string {
  return `${((units / middle) * 100).toFixed(2)}%`;
}
