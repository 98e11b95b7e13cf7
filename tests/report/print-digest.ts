import { createHash } from 'node:crypto';
import { renderPage } from '../../src/report/page.js';
import { sampleContext, sampleNotebook } from './sample-notebook.js';

// Run as a process of its own, so that it starts under another time zone and locale.
console.log(createHash('sha256').update(renderPage(sampleNotebook, sampleContext).html).digest('hex'));
