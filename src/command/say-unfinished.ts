import { unfinishedWrite } from '../store/unfinished-write.js';
import { ownHolder } from './own-holder.js';

const said = {
  earlier: 'An import into it was stopped before its end: this is the store from before that import, whole.',
  new: 'The last import into it was stopped while it cleared up: this is the store of that import, whole.',
};

/** Says, where errors go, which store is being read when an import into it was stopped. */
export async function sayUnfinished(store: string): Promise<void> {
  const left = await unfinishedWrite(store, ownHolder());
  if (left !== null) process.stderr.write(`${store}: ${said[left]} The next import removes what was left.\n`);
}
