/** One scale of type (a fifth apart in four steps), the reader's own fonts, and prose of a length that the eye can follow. */
export const typeStyle = `
:root{--serif:Charter,"Bitstream Charter","Sitka Text",Cambria,Georgia,"Liberation Serif",serif;
--sans:system-ui,-apple-system,"Segoe UI","Liberation Sans",Arial,sans-serif;
--code:ui-monospace,"Cascadia Mono",Menlo,Consolas,"Liberation Mono",monospace}
*{box-sizing:border-box}
html{font:1.0625rem/1.55 var(--serif);background:var(--paper);color:var(--ink);-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0}
h1,h2,h3,h4{line-height:1.2;font-weight:600;text-wrap:balance}
h1{font-size:2.1rem;margin:0 0 .4rem}
h2{font-size:1.45rem;margin:2.6rem 0 .7rem}
h3{font-size:1.15rem;margin:1.9rem 0 .5rem}
h4,h5,h6{font-size:1rem;margin:1.5rem 0 .4rem}
p,ul,ol,dl,blockquote{margin:.7rem 0}
li{margin:.2rem 0}
a{color:var(--accent);text-decoration-thickness:.06em;text-underline-offset:.15em}
a:hover{text-decoration-thickness:.14em}
:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
code{font:.86em/1.5 var(--code);overflow-wrap:anywhere}
mark{background:var(--alert-wash);color:var(--alert);padding:0 .2em;border:1px solid currentColor}
blockquote{margin-inline:0;padding-inline-start:1rem;border-inline-start:2px solid var(--rule);color:var(--soft)}
.value{font-variant-numeric:tabular-nums}
.value a{text-decoration-style:dotted}
.shown{font-weight:600}
.note,.small{color:var(--soft);font-family:var(--sans);font-size:.82rem;line-height:1.45}
.note{margin:.35rem 0}
`;
