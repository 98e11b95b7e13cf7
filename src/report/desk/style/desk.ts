/** The desk: a work sheet set like print, each formula small beneath its value, opened where it stands. */
export const deskStyle = `
.desk{max-width:64rem}
.unseen{position:absolute;inline-size:1px;block-size:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.place{display:flex;flex-wrap:wrap;align-items:baseline;gap:.1rem 1.1rem;font:.9rem/1.5 var(--sans);color:var(--soft);border-block-end:1px solid var(--rule);padding-block-end:.5rem}
.place .state{margin-inline-end:auto}
.word,.open,.arrange,.place a{min-height:1.6rem}
.word,.arrange,.open.plain{font:.86rem/1.4 var(--sans);color:var(--accent);background:none;border:0;padding:.2rem .3rem;cursor:pointer;text-decoration:underline;text-decoration-thickness:.06em;text-underline-offset:.2em;text-align:start}
.word:disabled{color:var(--soft);text-decoration:none;cursor:default}
.open{font:inherit;color:inherit;background:none;border:0;padding:.1rem .15rem;margin:0;cursor:text;text-align:inherit;max-width:100%;overflow-wrap:anywhere;box-decoration-break:clone;border-block-end:1px dotted transparent;min-width:1.6rem}
.open:hover:not(.plain){background:var(--band);border-block-end-color:var(--rule)}
.open:focus-visible{background:var(--accent-wash)}
.open em{color:var(--soft);font-style:normal}
.part,.slot,.desk .scroll{position:relative}
.holds-prose,.holds-heading,.holds-chart,.holds-settings{display:flex;gap:.2rem 1rem;align-items:baseline;justify-content:space-between}
.holds-chart{align-items:start}
.said{min-width:0;flex:0 1 auto;overflow-wrap:anywhere}
.holds-prose .said,.holds-heading .said{max-width:41rem}
.holds-chart .said{flex:1 1 auto}
.open.plain{flex:none}
.said>:first-child{margin-block-start:0}
.said>:last-child{margin-block-end:.1rem}
.part.prose,.part.chart,.part.settings{margin-block:.7rem}
.part.prose:has(.holds-prose){margin-block:.5rem}
.part.prose:has(.holds-heading){margin-block:2.2rem .6rem}
.part.prose:has(h1){margin-block:1.2rem .6rem}
.lead{display:flex;align-items:baseline;gap:1rem;margin-block-start:1.6rem;border-block-end:1.5px solid var(--ink)}
.lead p{margin:0 auto 0 0;font-weight:600}
.rows{list-style:none;margin:0 0 1.6rem;padding:0;border-block-end:1.5px solid var(--ink)}
.row{min-width:0}
.rows>.row{display:grid;grid-template-columns:minmax(9rem,17rem) 1fr;column-gap:.6rem;margin:0;padding-block:.4rem .45rem}
.rows>.row+.row{border-block-start:1px solid var(--hair)}
.called{display:flex;align-items:baseline;gap:.3rem;min-width:0;flex-wrap:wrap}
.rows .called::after{content:"";flex:1;min-width:1rem;border-block-end:1px dotted var(--rule)}
.called .holds-name{max-width:100%}
.worth{font-variant-numeric:tabular-nums lining-nums;min-width:0}
.worth .shown,.worth.given .open{font-weight:600;font-size:1.12rem}
.how{grid-column:2;display:flex;flex-wrap:wrap;gap:.05rem 1.1rem;font:.82rem/1.5 var(--sans);color:var(--soft);min-width:0}
.how code{font-size:.95em}
.rows .wrong{grid-column:1/-1}
.rows .slot .open{text-decoration:underline dotted var(--rule);text-underline-offset:.28em}
.rows .holds-name .open,.rows .open:hover{text-decoration:none}
.bench[data-held]+.scroll .wrong{display:none}
.worth .small{margin-inline-start:.5rem}
.holds-shown-as .open::before{content:"shown: ";color:var(--soft)}
.sentence{margin:2rem 0 .2rem;font-weight:600;max-width:46rem}
.part.sheet thead th{min-width:9rem;max-width:17rem;vertical-align:top;padding-block-end:.5rem}
.part.sheet thead th.row{font-weight:400}
.part.sheet thead .holds-name .open{font-weight:600}
.part.sheet thead .slot{display:block;margin-block:.05rem}
.part.sheet thead .holds-formula,.part.sheet thead .holds-shown-as{font-size:.78rem;line-height:1.4;color:var(--soft)}
.part.sheet tbody th{min-width:8rem}
.part.sheet thead .order{display:block;font-size:.78rem;font-weight:400;color:var(--soft);min-width:1.6rem;margin-inline-start:auto}
th[aria-sort] .open::after{content:none}
.part.sheet .long{max-height:26rem}
.part.sheet .long thead th{position:static;box-shadow:none}
.wrong{margin:.25rem 0;padding:.2rem .6rem;border-inline-start:3px solid var(--alert);background:var(--alert-wash);font:.84rem/1.45 var(--sans);overflow-wrap:anywhere;max-width:46rem;white-space:normal;text-align:start}
.slot[data-held]{display:block;flex:1 1 100%}
.slip{display:block;border-inline-start:3px solid var(--accent);background:var(--band);padding:.4rem .6rem .5rem;margin:.2rem 0 .5rem;font:.86rem/1.45 var(--sans);color:var(--ink);min-width:min(100%,19rem);text-align:start;font-weight:400}
.slip textarea{display:block;inline-size:100%;font:.95rem/1.5 var(--code);color:var(--ink);background:var(--paper);border:1px solid var(--rule);padding:.3rem .4rem;resize:vertical;field-sizing:content;min-height:2.1rem}
.slip.lines textarea{font-family:var(--serif);font-size:1rem;min-height:5rem}
.slip label{display:block;color:var(--soft);margin-block-end:.15rem}
.slip .acts{display:flex;flex-wrap:wrap;gap:.1rem .7rem;margin-block-start:.3rem;align-items:baseline}
.slip .acts span{color:var(--soft)}
.fits{list-style:none;margin:.2rem 0 0;padding:0;max-height:15rem;overflow-y:auto;border-block:1px solid var(--hair)}
.fits:empty{display:none}
.fits li{margin:0;padding:.22rem .4rem;min-height:1.6rem;cursor:pointer;display:grid;grid-template-columns:minmax(8rem,auto) 1fr;gap:0 .8rem}
.fits li+li{border-block-start:1px solid var(--hair)}
.fits li[aria-selected=true]{background:var(--accent-wash);outline:2px solid var(--accent);outline-offset:-2px}
.fits b{font:600 .9em var(--code);overflow-wrap:anywhere}
.fits i{font-style:normal;color:var(--soft)}
.fits small{grid-column:1/-1;font-size:.92em;color:var(--soft)}
.elsewhere{border:2px solid var(--alert);background:var(--alert-wash);padding:.6rem 1rem;margin-block:1rem;font:.9rem/1.5 var(--sans)}
.elsewhere dl{font-size:.9em}
.atend{margin-block-start:2.5rem;border-block-start:1px solid var(--rule);padding-block-start:.5rem;font:.88rem/1.5 var(--sans);color:var(--soft);display:flex;flex-wrap:wrap;gap:.1rem .8rem;align-items:baseline}
.list{list-style:none;padding:0;max-width:41rem}
.list li{border-block-end:1px solid var(--hair);padding-block:.5rem;margin:0}
#make{margin-block-start:2rem;border-block-start:1px solid var(--rule);padding-block-start:.8rem;font:.9rem/1.5 var(--sans)}
#make label{display:block}
#make input{font:.95rem/1.5 var(--code);color:var(--ink);background:var(--paper);border:1px solid var(--soft);padding:.3rem .4rem;inline-size:min(100%,22rem);min-height:2rem}
#make .wrong:empty{display:none}
.list a{display:inline-block;min-height:1.6rem;font-size:1.15rem}
@media (max-width:36rem){
.holds-prose,.holds-heading,.holds-chart,.holds-settings{display:block}
.rows>.row{grid-template-columns:1fr}
.how{grid-column:1}
.rows .called::after{display:none}
.part.sheet thead th{min-width:8rem}
.fits li{grid-template-columns:1fr}
}
@media (prefers-reduced-motion:no-preference){.worth .shown,.part.sheet td{transition:background-color .6s}}
.fresh{background:var(--accent-wash)}
@media print{.place,.arrange,.open.plain,.atend{display:none}}
`;
