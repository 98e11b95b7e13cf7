import { loadEngine } from './load-engine.js';
import { openAccounts } from './open-accounts.js';
import { readyParts } from './ready-parts.js';

readyParts(document);
openAccounts();
loadEngine();
