/** On paper (A4 or Letter): page numbers, nothing hidden, no row, drawing or box cut in two. */
export const printStyle = `
@page{margin:18mm 16mm 20mm;@bottom-right{content:counter(page) " of " counter(pages);font:9pt sans-serif;color:#4a565c}}
@media print{
html{font-size:10.5pt;line-height:1.4}
main{max-width:none;padding:0}
.skip,.downloads,.copy,#said{display:none}
.scroll{overflow:visible}
.drawing{min-width:0}
tr,figure>.scroll,.problems,dt,li{break-inside:avoid}
thead{display:table-header-group}
tfoot{display:table-row-group}
h1,h2,h3,h4,caption,figcaption,summary{break-after:avoid}
p,li{orphans:3;widows:3}
th button{display:contents}
th[aria-sort] button::after{content:none}
td.number,td.number .small{white-space:normal}
table{font-size:8.6pt}
a{color:inherit}
details::details-content{content-visibility:visible;block-size:auto}
summary{list-style:none;color:var(--ink);font-weight:600}
}
@media (prefers-reduced-motion:no-preference){html{scroll-behavior:smooth}}
`;
