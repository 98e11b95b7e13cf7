/** One column of prose; tables and drawings may take the margin beside it where the window has one. */
export const layoutStyle = `
main{max-width:70rem;margin:0 auto;padding:2.2rem clamp(1rem,4vw,2.5rem) 4rem}
main>p,main>ul,main>ol,main>blockquote,main>section>p,main>section>ul,main>section>ol,.account p{max-width:41rem}
.skip{position:absolute;left:-100vw;top:0;padding:.5rem 1rem;background:var(--paper);z-index:1}
.skip:focus{left:0}
.title{border-block-end:1px solid var(--ink);padding-block-end:.9rem}
.title ul{list-style:none;padding:0;margin:0;display:flex;flex-wrap:wrap;gap:.1rem 1.6rem;color:var(--soft);font:.9rem/1.5 var(--sans)}
.contents{font:.9rem/1.5 var(--sans);margin:1.2rem 0 2rem}
.contents h2{font-size:.9rem;margin:0 0 .3rem;font-family:var(--sans)}
.contents ol{columns:17rem 2;column-gap:2rem;margin:0;padding-inline-start:2rem}
.contents li{break-inside:avoid;margin:0;padding-block:.1rem}
.problems{border:2px solid var(--alert);background:var(--alert-wash);padding:.5rem .9rem;margin:.8rem 0;max-width:46rem;font:.86rem/1.5 var(--sans);overflow-wrap:anywhere}
td .problems{margin:0;min-width:14rem}
.problems p{margin:.35rem 0}
details{margin:.3rem 0;font:.88rem/1.5 var(--sans);max-width:46rem}
details.numbers{max-width:none}
.accounts>details{margin-inline-start:1rem}
summary{cursor:pointer;color:var(--accent);padding:.25rem 0;min-height:1.5rem}
details[open]>summary{font-weight:600}
.account>div{border-inline-start:2px solid var(--rule);padding-inline-start:1rem;margin-block:.2rem .9rem}
dl{display:grid;grid-template-columns:minmax(8rem,13rem) 1fr;gap:.2rem 1.2rem;font:.88rem/1.5 var(--sans)}
dt{color:var(--soft);grid-column:1}
dd{margin:0;grid-column:2;overflow-wrap:anywhere;min-width:0}
figure{margin:1.6rem 0 2rem}
figcaption{font-weight:600;margin:0 0 .5rem;max-width:46rem}
.downloads{font:.88rem/1.5 var(--sans);margin:.3rem 0 1.4rem}
.mark{font:.82em var(--sans);text-decoration:none;white-space:nowrap}
.methods li:target,tr:has(:target){background:var(--accent-wash)}
.account>div:target{border-inline-start:4px solid var(--accent)}
#said{position:fixed;inset-block-end:0;inset-inline-start:0;margin:0;padding:.3rem .8rem;background:var(--paper);border:1px solid var(--rule);font:.85rem/1.5 var(--sans)}
#said:empty{border:0;padding:0}
@media (max-width:36rem){h1{font-size:1.7rem}dl{display:block}dt{margin-block-start:.4rem}}
`;
