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
    case 'problem':
      return unknownKind;
  }
}
