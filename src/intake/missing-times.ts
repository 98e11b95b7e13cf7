import type { Cell } from './cell.js';
import type { FieldRule, FileRule } from './crosswalk.js';

/** How many cells of a file held each text that stands for missing, by field and text. */
export type MissingTimes = Readonly<Record<string, Readonly<Record<string, number>>>>;

/** How often each field was missing, by the cells that read it. */
export function timesMissingOf(readings: readonly { readonly rule: FieldRule; readonly cell: Cell }[]): MissingTimes {
  return addedTimes(
    readings.map(({ rule, cell }): MissingTimes => ({ [rule.field.name]: Object.fromEntries(cell.timesMissing()) })),
  );
}

/** The counts of several parts of a file taken together; what was never met is left out. */
export function addedTimes(parts: readonly MissingTimes[]): MissingTimes {
  const sums = new Map<string, Map<string, number>>();
  for (const part of parts) {
    for (const [field, texts] of Object.entries(part)) {
      const sum = sums.get(field) ?? new Map<string, number>();
      sums.set(field, sum);
      for (const [text, times] of Object.entries(texts)) if (times > 0) sum.set(text, (sum.get(text) ?? 0) + times);
    }
  }
  const met = [...sums].filter(([, texts]) => texts.size > 0);
  return Object.fromEntries(met.map(([field, texts]) => [field, Object.fromEntries(texts)]));
}

/**
 * How many cells were missing for each reason, by field. The reason is the one that the crosswalk gives for the text; without
 * one, `blank` for an empty cell and the text itself for any other.
 */
export function missingByReason(times: MissingTimes, rule: FileRule): MissingTimes {
  const byField = new Map(rule.fields.map((fieldRule) => [fieldRule.field.name, fieldRule]));
  const reasons = Object.entries(times).map(([field, texts]): MissingTimes => {
    const why = byField.get(field)?.missingWhy ?? rule.missingWhy;
    const named = Object.entries(texts).map(([text, count]): MissingTimes => {
      return { [field]: { [why.get(text) ?? (text === '' ? 'blank' : text)]: count } };
    });
    return addedTimes(named);
  });
  return addedTimes(reasons);
}
