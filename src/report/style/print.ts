/** On paper (A4 or Letter): title and page numbers on every page, nothing hidden, no row, drawing or box cut in two. */
export function printStyle(title: string): string {
  return `
@page{margin:20mm 16mm 18mm;@top-left{content:${cssText(title)};font:9pt sans-serif;color:#4a565c}@bottom-right{content:counter(page) " of " counter(pages);font:9pt sans-serif;color:#4a565c}}
@media print{
html{font-size:10.5pt;line-height:1.4}
main{max-width:none;padding:0}
.skip,.downloads,.copy,#said,.numbers.repeated{display:none}
.scroll,.scroll.long{overflow:visible;max-height:none;background:none}
.scroll.long{border:0}
.scroll.long thead th{position:static;box-shadow:none}
.drawing{min-width:0}
tr,figure>.scroll,.problems,dt,li{break-inside:avoid}
thead{display:table-header-group}
tfoot{display:table-row-group}
tbody tr:nth-child(-n+2),tbody tr:nth-last-child(-n+2),tfoot tr{break-before:avoid}
h1,h2,h3,h4,caption,figcaption,summary{break-after:avoid}
p,li{orphans:3;widows:3}
th button{display:contents}
th[aria-sort] button::after{content:none}
td.number,.small>span{white-space:normal}
table{font-size:8.4pt}
th,td{padding-inline-end:.5rem}
thead th,td .why.small{min-width:0}
tbody th{min-width:3rem}
tbody th:first-child{position:static;min-width:6.2rem}
details{max-width:none}
.wide{font-size:6.6pt;line-height:1.3;hyphens:auto}
.wide .small,.wide .mark{font-size:5.9pt}
.wide th,.wide td{padding-inline-end:.3rem}
.wide thead th{overflow-wrap:anywhere;min-width:3rem}
.wide tbody th{min-width:2.4rem}
.wide tbody th:first-child{min-width:3.6rem}
a{color:inherit}
details::details-content{content-visibility:visible;block-size:auto}
details.account:not([open]),details.accounts:not(:has(details[open])){display:none}
details.behind>summary{display:none}
summary{list-style:none;color:var(--ink);font-weight:600}
}
@media (prefers-reduced-motion:no-preference){html{scroll-behavior:smooth}}
`;
}

/** A text as a string of CSS; letters that could end it, or the style element, are written by their numbers. */
function cssText(text: string): string {
  return `"${text.replace(/["\\\n\r\f<>]/g, (letter) => `\\${letter.charCodeAt(0).toString(16)} `)}"`;
}
