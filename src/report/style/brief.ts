/**
 * A brief: its figures as four large numbers over their limits, on paper one page without the workings, on a wide screen a
 * sheet of 16 to 9 with the drawing at the right.
 */
export const briefStyle = `
.brief{border-block-end:1px solid var(--ink);padding-block-end:1rem;margin-block-end:2rem}
.brief>.title{border-block-end:0;padding-block-end:0}
.brief>.accounts:not([open]),.brief .downloads{display:none}
.brief>.scroll caption,.brief>.scroll thead{position:absolute;clip-path:inset(50%);inline-size:1px;block-size:1px;overflow:hidden}
.brief>.scroll{overflow:visible;background:none}
.brief>.scroll table,.brief>.scroll tbody{display:block;border:0;inline-size:auto}
.brief>.scroll tbody{display:grid;grid-template-columns:repeat(auto-fit,minmax(11rem,1fr));gap:1rem 1.6rem}
.brief>.scroll tr{display:flex;flex-direction:column;border:0;border-block-start:3px solid var(--accent);padding-block-start:.35rem}
.brief>.scroll th,.brief>.scroll td{display:block;border:0;padding:0;text-align:start;min-inline-size:0;position:static}
.brief>.scroll td.number{order:-1;font:700 1.9rem/1.15 var(--serif);white-space:nowrap}
.brief>.scroll th{font-weight:600}
.brief>.scroll td:not(.number){color:var(--soft);font-size:.82rem}
.brief figure{margin-block:1rem}
.brief>.shown-choice[data-whole]{display:none}
.brief .from{color:var(--soft)}
@media screen and (min-width:75rem) and (min-aspect-ratio:3/2){
.brief{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1.15fr);grid-auto-rows:min-content;align-content:space-between;column-gap:3rem;inline-size:min(calc(100vw - 5rem),calc((100vh - 3rem)*16/9));min-block-size:min(calc((100vw - 5rem)*9/16),calc(100vh - 3rem));margin-inline:50%;translate:-50% 0;font-size:clamp(.88rem,1.1vw,2rem);line-height:1.42}
.brief>.title,.brief>.problems,.brief>.shown-choice,.brief>.scroll,.brief>.from{grid-column:1/-1}
.brief>*{grid-column:1;margin-block:.35rem}
.brief>figure{grid-column:2;grid-row:4/span 8;align-self:center}
.brief>.shown-choice:not([data-whole])~figure{grid-row:5/span 8}
.brief>.scroll td.number{font-size:2.4em}
.brief>.scroll tbody{grid-template-columns:repeat(4,minmax(0,1fr))}
.brief h1{font-size:1.9em;margin:0}
.brief>.scroll table{font-size:1em}
.brief>p,.brief figcaption{max-inline-size:none}
.brief>.scroll th,.brief>.scroll td:not(.number),.brief .note,.brief>.title ul{font-size:.82em}
.brief .drawing{inline-size:100%;max-inline-size:none}
}
@media print{
.workings{display:none}
.brief{border:0;margin:0;padding:0;break-after:avoid}
.brief>.scroll tbody{grid-template-columns:repeat(4,minmax(0,1fr));gap:.8rem}
.brief>.scroll td.number{font-size:17pt}
.brief>.scroll td:not(.number){font-size:8pt}
.brief details{display:none}
.brief figure{margin-block:.5rem}
.brief .drawing{max-block-size:70mm}
.brief>p,.brief figcaption,.brief h1{max-inline-size:none}
.brief p,.brief li{margin-block:.35rem}
.brief h2,.brief h3{margin-block:.7rem .2rem}
}
`;
