import { loadEngine } from './load-engine.js';
import { noteScrolling } from './note-scrolling.js';
import { openAccounts } from './open-accounts.js';
import { readyParts } from './ready-parts.js';

readyParts(document);
openAccounts();
noteScrolling(document);
loadEngine();
