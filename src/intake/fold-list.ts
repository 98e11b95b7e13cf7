import type { FoldList } from './crosswalk.js';

/** The parts that a cell names; null where a text among them names none that is known. */
function namedIn(list: FoldList, text: string): ReadonlySet<string> | null {
  const named = new Set<string>();
  for (const item of text.split(list.between).map((entry) => entry.trim())) {
    if (item === '') continue;
    const part = list.texts.get(item);
    if (part === undefined) return null;
    named.add(part);
  }
  return named;
}

/** What a cell that names several parts says of one of them, as a key of the fold's values; null for an unknown name. */
export function saidInList(list: FoldList, text: string): string | null {
  if (text === '') return list.blank;
  if (list.none.has(text)) return list.otherwise;
  const named = namedIn(list, text);
  if (named === null) return null;
  return named.has(list.part) ? list.named : list.otherwise;
}
