import { openAccounts } from '../../live/open-accounts.js';
import { ask, whenChanged } from './ask.js';
import { openParts, showParts } from './parts.js';
import { readying } from './readied.js';

const notebook = location.pathname.replace(/\/report$/, '');
const ready = readying(notebook);

async function refresh(): Promise<void> {
  const state = await ask(`${notebook}/report`, {});
  if (state === null) return;
  showParts(state, ready);
  document.documentElement.dataset.shown = state.namesMark;
}

for (const part of openParts()) ready(part)();
openAccounts();
whenChanged(`${notebook}/events`, () => void refresh());
void refresh();
