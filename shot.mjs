import { chromium } from 'playwright-core';
import { existsSync } from 'node:fs';
const [,, file, out, w='1280', scheme='light', media='screen'] = process.argv;
const exe = process.env.CHROME ?? ['/usr/bin/chromium','/usr/bin/chromium-browser','/usr/bin/google-chrome'].find(existsSync);
const b = await chromium.launch(exe?{executablePath:exe}:{});
const p = await b.newPage({viewport:{width:+w,height:900},colorScheme:scheme});
await p.goto('file://'+file);
if(media==='pdf'){await p.pdf({path:out,preferCSSPageSize:true,printBackground:true});}
else {await p.screenshot({path:out,fullPage:true}); console.log(await p.evaluate(()=>[document.documentElement.scrollWidth,innerWidth,document.documentElement.scrollHeight]));}
await b.close();
