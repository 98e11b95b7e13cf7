import { type FormulaKind, truthKind, unknownKind } from '../kind.js';
import type { Evaluated } from './evaluated.js';

/** The kind that a value has for the formulas that name it; unknown for one that failed. */
export function kindOfValue(value: Evaluated): FormulaKind {
  switch (value.kind) {
    case 'number':
      return { kind: 'number', unit: value.unit };
    case 'text':
      return { kind: 'text', codes: null, text: value.text };
    case 'date':
      return { kind: 'date' };
    case 'truth':
      return truthKind;
    case 'rows':
      return { kind: 'rows', table: value.table };
    case 'list':
      return { kind: 'list', of: value.items.length === 0 ? unknownKind : kindOfItem(value.items[0]!) };
    case 'sheet': {
      const { name, keys, columns, table } = value;
      return { kind: 'sheet', name, keys, columns, table };
    }
    case 'problem':
      return unknownKind;
  }
}

/** An item's kind; its text is not told, since the others of its list have texts of their own. */
function kindOfItem(item: Evaluated): FormulaKind {
  return item.kind === 'text' ? { kind: 'text', codes: null, text: null } : kindOfValue(item);
}
