import { chromium } from 'playwright-core';
import { existsSync } from 'node:fs';
const [,, file, prefix, w='1280', scheme='light', step='2000', from='0', to='99'] = process.argv;
const exe = process.env.CHROME ?? ['/usr/bin/chromium','/usr/bin/chromium-browser','/usr/bin/google-chrome'].find(existsSync);
const b = await chromium.launch(exe?{executablePath:exe}:{});
const p = await b.newPage({viewport:{width:+w,height:+step},colorScheme:scheme});
await p.goto('file://'+file);
const h = await p.evaluate(()=>document.documentElement.scrollHeight);
for(let i=+from;i*+step<h&&i<=+to;i++){ await p.screenshot({path:`${prefix}${i}.png`,fullPage:true,clip:{x:0,y:i*+step,width:+w,height:Math.min(+step,h-i*+step)}}); }
console.log(h);
await b.close();
