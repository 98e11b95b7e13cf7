import { openAccounts } from '../../live/open-accounts.js';
import { ask, whenChanged } from './ask.js';
import { showParts } from './parts.js';

const notebook = location.pathname.replace(/\/report$/, '');

async function refresh(): Promise<void> {
  const state = await ask(`${notebook}/report`, {});
  if (state === null) return;
  showParts(state);
  document.documentElement.dataset.shown = state.namesMark;
}

openAccounts();
whenChanged(`${notebook}/events`, () => void refresh());
void refresh();
