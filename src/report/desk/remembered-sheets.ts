import type { Element } from 'hast';
import type { NotebookWorkings } from '../../notebook/workings.js';
import { currentLocale } from '../../record/written-numbers.js';
import type { MakeSheet } from '../page-parts.js';
import { saidEarlier } from '../said-earlier.js';
import { sheetPart } from '../sheet-table.js';

/**
 * Makes the sheets of a report, and gives back what it made before where neither the values behind a sheet nor anything that
 * its accounts tell has changed. A recalculation leaves values that stay the same the same objects.
 */
export function rememberedSheets(): (workings: NotebookWorkings) => MakeSheet {
  const made = new Map<string, { readonly key: string; readonly element: Element }>();
  const numbers = new WeakMap<object, number>();
  let next = 1;
  const numberOf = (value: object | undefined): number => {
    if (value === undefined) return 0;
    const known = numbers.get(value) ?? next++;
    numbers.set(value, known);
    return known;
  };
  return (workings) => (sheet, notebook, methods, cells) => {
    const { rows: _rows, ...shown } = sheet;
    const behind = workings.sheets.get(sheet.name);
    const values = (behind?.cells ?? []).map((row) => [...row.values()].map(numberOf));
    const under = namesUnder(workings, behind?.needs ?? []).map((name) => [
      name,
      notebook.figures.get(name)?.formula ?? notebook.selections.get(name)?.formula ?? notebook.inputs.get(name),
      numberOf(workings.names.get(name)?.value),
    ]);
    const earlier = saidEarlier(sheet, notebook);
    const key = JSON.stringify([
      currentLocale(),
      shown,
      earlier === null ? [] : [earlier.sheet.name, earlier.sheet.title, ...earlier.notes],
      behind?.keys,
      values,
      under,
      [...methods],
      notebook.file,
      numberOf(workings.book),
    ]);
    const kept = made.get(sheet.name);
    if (kept?.key === key) return kept.element;
    const element = sheetPart(sheet, notebook, methods, cells);
    made.set(sheet.name, { key, element });
    return element;
  };
}

function namesUnder({ names }: NotebookWorkings, needs: readonly string[]): readonly string[] {
  const found = new Set(needs);
  for (const name of found) for (const need of names.get(name)?.needs ?? []) found.add(need);
  return [...found];
}
