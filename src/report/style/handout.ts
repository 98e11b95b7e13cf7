/**
 * A handout looks like the paper it becomes: black on white in any scheme, so that a copier keeps every hatching. On paper it
 * takes one side of Letter or A4, and stands alone when its own address was followed.
 */
export const handoutStyle = `
.handout,.on-white{--paper:#ffffff;--ink:#000000;--soft:#333333;--rule:#555555;--hair:#bbbbbb;--alert:#000000;--ramp-1:#ffffff;--ramp-2:#f1f1f1;--ramp-3:#dcdcdc;--ramp-4:#bdbdbd}
.handout{background:#ffffff;color:#000000;border:1px solid var(--rule);padding:1.4rem;max-width:46rem;margin:.6rem 0 1.4rem;font:.84rem/1.35 var(--sans)}
details.handout-fold{max-width:none}
.handout h3{font:600 1.25rem/1.2 var(--serif);margin:0}
.handout p{margin:.35rem 0;max-width:none}
.handout strong{margin-inline-end:.35em}
.handout-from{color:var(--soft);font-size:.78rem}
.handout-drawing{overflow-x:auto}
.handout-parts{font-size:.78rem;line-height:1.3;border-block:1px solid #000000;width:100%;min-width:34rem}
.handout-parts tbody>tr:last-child>*{border-block-end:0}
.handout-parts th,.handout-parts td{padding:.18rem .6rem .18rem 0;background:none;position:static;min-width:0}
.handout-parts tbody th{font-weight:600;min-width:7rem;position:static}
.handout-parts td:nth-child(3){min-width:12rem}
.handout-parts td:nth-child(4){min-width:8rem}
.handout-parts td:last-child{min-width:8.5rem}
.handout-parts .number{text-align:end}
.handout-cautions{font-size:.74rem;border:1px solid #000000;padding:.3rem .5rem}
.handout{overflow-x:auto}
@media print{
.handout-fold>summary,.handout-alone{display:none}
.handout{border:0;padding:0;margin:0;max-width:none;overflow:visible;break-before:page;break-after:page;break-inside:avoid;font-size:8.6pt}
.handout-parts,.handout-from{font-size:8pt}
.handout-cautions{font-size:7.6pt}
.handout .drawing{width:100%;max-height:90mm}
.handout p{margin:.15rem 0}
.handout-parts th,.handout-parts td{padding-block:.1rem}
main:has(.handout:target)>:not(:has(.handout:target)){display:none}
main:has(.handout:target) .handout{break-before:auto;break-after:auto}
}
`;
