import type { Node } from 'yaml';
import type { Fold, FoldColumn, FoldList } from './crosswalk.js';
import { type CraftPart, readPart } from './read-part.js';
import type { YamlDocument } from './yaml-document.js';

const known = ['between', 'parts', 'named', 'otherwise', 'none'];

/** What is said of a part, as fields of the folded record; null where it cannot be read. */
export type ReadSaid = (node: Node, what: string) => ReadonlyMap<string, string>;

/** The columns that name several parts in one cell, as columns of the fold, one a part, and what each cell then says. */
export interface FoldLists {
  readonly columns: readonly FoldColumn[];
  readonly values: Fold['values'];
}

/** A key that no cell can hold, by which a list's own values are kept among those of cells. */
function hiddenKey(column: string, what: string): string {
  return `\0${what} ${column}`;
}

/**
 * Reads the setting `lists`: columns in which the parts found are named one after the other. A part named is as `named`
 * says; where something is named, or a text that stands for none, every other part is as `otherwise` says, absent where the
 * craft cannot carry it; a blank cell leaves all parts not checked.
 */
export function readFoldLists(yaml: YamlDocument, node: Node, readSaid: ReadSaid): FoldLists {
  const columns: FoldColumn[] = [];
  const values = new Map<string, ReadonlyMap<string, string>>();
  for (const { key, value } of yaml.entries(node, 'lists')) {
    const column = key.trim();
    const settings = yaml.settings(value, `the list ${column}`, known, ['between', 'parts', 'named', 'otherwise']);
    const betweenNode = settings.get('between');
    const between = betweenNode === undefined ? null : yaml.text(betweenNode, 'what stands between the parts');
    const parts = new Map<string, CraftPart>();
    const partsNode = settings.get('parts');
    for (const entry of partsNode === undefined ? [] : yaml.entries(partsNode, 'parts')) {
      const part = readPart(yaml, entry.value, `the part ${entry.key}`);
      if (part !== null) parts.set(entry.key.trim(), part);
    }
    const keyOf = (what: 'named' | 'otherwise') => {
      const said = settings.get(what);
      if (said !== undefined) values.set(hiddenKey(column, what), readSaid(said, what));
      return hiddenKey(column, what);
    };
    values.set(hiddenKey(column, 'absent'), new Map([['state', 'absent']]));
    values.set(hiddenKey(column, 'blank'), new Map([['state', 'not checked']]));
    const noneNode = settings.get('none');
    const list: Omit<FoldList, 'part'> = {
      between: between ?? '',
      texts: new Map([...parts].map(([text, { component, side }]) => [text, `${component}, ${side}`])),
      none: new Set(noneNode === undefined ? [] : yaml.texts(noneNode, 'texts that name no part')),
      named: keyOf('named'),
      otherwise: keyOf('otherwise'),
      absent: hiddenKey(column, 'absent'),
      blank: hiddenKey(column, 'blank'),
    };
    if (between === '') yaml.complain('wrong-value', betweenNode!, '', 'a sign between parts', 'Write between: ";".');
    const distinct = new Map([...parts.values()].map((part) => [`${part.component}, ${part.side}`, part]));
    for (const [part, { component, side }] of distinct) {
      columns.push({ column, component, side, isOptional: false, list: { ...list, part } });
    }
  }
  return { columns, values };
}
