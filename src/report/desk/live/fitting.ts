import type { KnownName } from '../../../notebook/known-names.js';

/** A name that fits where the writer is, with the stretch of the text that it would replace. */
export interface Fitting {
  readonly known: KnownName;
  readonly from: number;
  readonly to: number;
  readonly put: string;
}

const mostShown = 8;

/** The kinds of names that each kind of place takes; what is not here takes none. */
const kindsFor: Readonly<Record<string, readonly KnownName['kind'][]>> = {
  formula: ['input', 'figure', 'selection', 'sheet', 'function', 'table', 'field'],
  rows: ['input', 'figure', 'selection', 'table', 'field', 'function'],
  sheet: ['selection', 'table', 'field', 'finding', 'input'],
  unit: ['unit'],
  'shown as': ['format'],
};

/**
 * The names that fit a place as far as it is written: those that begin so before those that only hold it, fields of the tables
 * that the text names before others. Within quotes, the codes of the field before them.
 */
export function fitting(names: readonly KnownName[], holds: string, text: string, caret: number): readonly Fitting[] {
  const kinds = kindsFor[holds];
  if (kinds === undefined) return [];
  const before = text.slice(0, caret);
  if (holds === 'unit' || holds === 'shown as') {
    return ranked(
      names.filter(({ kind }) => kinds.includes(kind)),
      text.trim(),
      text,
      50,
    ).map((known) => {
      return { known, from: 0, to: text.length, put: known.name };
    });
  }
  const quoted = /([a-z][a-z0-9_]*)\s+(?:is not|is|not in|in)\s*(?:\([^()]*)?"([^"]*)$/.exec(before);
  if (quoted !== null) {
    const [, field, part = ''] = quoted;
    const codes = names.filter(({ kind, of }) => kind === 'code' && of === field);
    const end = caret + /^[^"]*"?/.exec(text.slice(caret))![0].length;
    return ranked(codes, part, text, mostShown).map((known) => {
      return { known, from: caret - part.length, to: end, put: `${known.name}"` };
    });
  }
  if ((before.match(/"/g)?.length ?? 0) % 2 === 1) return [];
  const word = /[a-z][a-z0-9_]*$/.exec(before)?.[0] ?? '';
  if (word === '') return [];
  const to = caret + /^[a-z0-9_]*/.exec(text.slice(caret))![0].length;
  return ranked(
    names.filter(({ kind }) => kinds.includes(kind)),
    word,
    text,
    mostShown,
  ).map((known) => {
    return { known, from: caret - word.length, to, put: known.kind === 'function' ? `${known.name}(` : known.name };
  });
}

function ranked(names: readonly KnownName[], part: string, text: string, most: number): readonly KnownName[] {
  const wanted = part.toLowerCase();
  const tables = tablesIn(names, text);
  const best = new Map<string, { readonly known: KnownName; readonly rank: number }>();
  for (const known of names) {
    const name = known.name.toLowerCase();
    if (!name.includes(wanted) || name === wanted) continue;
    const rank = (name.startsWith(wanted) ? 0 : 2) + (known.kind === 'field' && !tables.has(known.of) ? 1 : 0);
    const kept = best.get(known.name);
    if (kept === undefined || rank < kept.rank) best.set(known.name, { known, rank });
  }
  return [...best.values()]
    .sort((one, other) => one.rank - other.rank)
    .slice(0, most)
    .map(({ known }) => known);
}

/** The tables that a text names, itself or through a selection. */
function tablesIn(names: readonly KnownName[], text: string): ReadonlySet<string> {
  const words = new Set(text.match(/[a-z][a-z0-9_]*/g) ?? []);
  return new Set(
    names.flatMap(({ name, kind, unit }) => {
      if (!words.has(name)) return [];
      return kind === 'table' ? [name] : kind === 'selection' ? [unit.replace(/^rows of /, '')] : [];
    }),
  );
}
