/** What a reader chooses stands in one calm band; parts that are being counted again are dimmed until they are. */
export const choiceStyle = `
.choice{display:flex;flex-wrap:wrap;gap:.5rem 1.2rem;align-items:end;border-block-end:1px solid var(--rule);padding:.6rem 0 .8rem;margin:.4rem 0 0;font:.88rem/1.4 var(--sans)}
.choice p{margin:0;max-width:none;flex-basis:100%}
.choice-head{font-weight:600}
.choice label>span{display:block;color:var(--soft);font-size:.82rem}
.choice select,.choice button{min-height:1.9rem}
.choice select{min-width:8rem}
.choice button{font:inherit;color:var(--accent);background:none;border:1px solid var(--rule);padding:.25rem .8rem;min-height:1.6rem;cursor:pointer}
.choice button:disabled,.choice button[aria-disabled=true]{color:var(--soft);cursor:default}
.choice select:disabled{opacity:1;color:var(--soft)}
abbr.withheld{text-decoration:none;border:1px dashed var(--soft);padding:0 .3em;color:var(--soft);font-style:normal}
.public{font:.9rem/1.5 var(--sans);border-inline-start:3px solid var(--accent);padding-inline-start:.8rem}
.shown-choice{font:.88rem/1.5 var(--sans);margin:.5rem 0 1.2rem;max-width:46rem}
.shown-choice p{margin:0}
td input{font:inherit;color:inherit;background:var(--paper);border:1px solid var(--rule);padding:.15rem .4rem;min-height:1.6rem;max-width:100%;text-align:inherit}
td input:read-only{border-color:transparent}
[data-stale]{opacity:.55}
@media print{.choice{display:none}.shown-choice{border-block-end:1px solid var(--ink);padding:.3rem 0}td input{border:0;padding:0}[data-stale]{opacity:1}}
`;
