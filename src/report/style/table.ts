/**
 * Tables as a printer sets them: rules above and below, none upright, numbers in line, and a scroll of their own, shaded at
 * the edge beyond which there is more. The shade stands two pixels in from that edge, so that at no zoom a line of it is left
 * where there is nothing more. Rules belong to cells, since a first column that stays in sight would cover the table's own.
 */
export const tableStyle = `
.scroll{overflow-x:auto;margin:1rem 0;max-width:100%;background:linear-gradient(to left,var(--paper) 40%,transparent) right -2px top/2.5rem 100% no-repeat local,linear-gradient(to left,var(--edge),transparent) right 2px top/.7rem 100% no-repeat scroll}
:root{--edge:color-mix(in srgb,var(--ink) 18%,transparent)}
table{min-width:min(100%,24rem);border-collapse:separate;border-spacing:0;font:.88rem/1.4 var(--sans);font-variant-numeric:tabular-nums lining-nums;border-block-start:1.5px solid var(--ink)}
:where(table>:last-child>tr:last-child)>*{border-block-end:1.5px solid var(--ink)}
caption{text-align:start;font:600 1rem/1.4 var(--serif);padding-block-end:.4rem;max-width:46rem}
th,td{padding:.34rem .95rem .34rem 0;text-align:start;vertical-align:top}
th:last-child,td:last-child{padding-inline-end:.2rem}
thead th{border-block-end:1px solid var(--ink);font-weight:600;vertical-align:bottom;min-width:4.6rem}
.scroll.long{max-height:min(40rem,85vh);overflow-y:auto;border-block-end:1px solid var(--rule)}
.scroll.long thead th{position:sticky;inset-block-start:0;z-index:1;background:var(--paper);box-shadow:inset 0 -1px var(--ink)}
tbody tr+tr>*{border-block-start:1px solid var(--hair)}
tfoot>tr>*{border-block-start:1px solid var(--ink);font-weight:600}
caption span{display:inline-block;position:sticky;inset-inline-start:0;max-width:min(46rem,calc(100vw - 2.5rem))}
tbody th{font-weight:400;min-width:10rem;background:var(--paper)}
tbody th:first-child{position:sticky;inset-inline-start:0}
@media (max-width:36rem){tbody th{min-width:6.5rem;overflow-wrap:anywhere}td:not(.number){min-width:8.5rem}td code{display:inline-block;min-width:13rem}}
.number{text-align:end}
td.number{white-space:nowrap}
td .small,th .small{display:block;font-weight:400;font-size:.78rem;line-height:1.35}
td.number .small{white-space:normal}
.small>span,.whole{white-space:nowrap}
td .why.small{white-space:normal;min-width:9rem}
th button{font:inherit;color:inherit;background:none;border:0;padding:.1rem 0;min-height:1.5rem;text-align:inherit;cursor:pointer;text-decoration:underline dotted;text-underline-offset:.2em}
th[aria-sort] button{text-decoration-style:solid}
th[aria-sort=ascending] button::after{content:" \\2191"}
th[aria-sort=descending] button::after{content:" \\2193"}
.copy{font:.85rem var(--sans);color:var(--accent);background:none;border:1px solid var(--rule);padding:.25rem .7rem;cursor:pointer;min-height:1.6rem}
.traced td{cursor:pointer}
.traced td:hover{background:var(--accent-wash)}
select{font:inherit;color:inherit;background:var(--paper);border:1px solid var(--rule);padding:.2rem .4rem;min-height:1.6rem;max-width:100%}
h4,.cell-head{font:600 .9rem/1.5 var(--sans);margin:.8rem 0 .3rem}
`;
