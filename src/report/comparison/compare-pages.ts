import type { CarriedFigure, CarriedValue, PageResults } from '../results/page-results.js';
import { changedDefinitions, changedInputs } from './changed-definitions.js';
import { changedFiles } from './changed-files.js';
import { changedSheet } from './changed-sheet.js';
import type { ChangedFigure, Comparison } from './comparison.js';
import { movedFrom } from './moved.js';
import { type WhyOf, whyOf } from './why-of.js';

/** What changed from one rendering of a page to another: everything is compared as the pages carry it, unrounded but for cells of sheets. */
export function comparePages(before: PageResults, after: PageResults): Comparison {
  const inputs = changedInputs(before, after);
  const definitions = changedDefinitions(before, after);
  const why = whyOf(before, after, inputs, definitions);
  return {
    before,
    after,
    files: changedFiles(before, after),
    inputs,
    definitions,
    figures: pairs(before.figures, after.figures).flatMap((pair) => changedFigure(...pair, why)),
    sheets: pairs(before.sheets, after.sheets).flatMap(([was, is]) => {
      return changedSheet(was, is, () => why((is ?? was)!.name, true)) ?? [];
    }),
  };
}

/** Whether two renderings say the same, whatever made them. */
export function saysTheSame({ figures, sheets, inputs, definitions }: Comparison): boolean {
  return figures.length + sheets.length + inputs.length + definitions.length === 0;
}

/** Things of one name beside each other, in the order of the later rendering; null where one side has none. */
function pairs<Named extends { readonly name: string }>(
  before: readonly Named[],
  after: readonly Named[],
): readonly (readonly [before: Named | null, after: Named | null])[] {
  const was = new Map(before.map((one) => [one.name, one]));
  const is = new Set(after.map(({ name }) => name));
  return [
    ...after.map((one) => [was.get(one.name) ?? null, one] as const),
    ...before.filter(({ name }) => !is.has(name)).map((one) => [one, null] as const),
  ];
}

function changedFigure(before: CarriedFigure | null, after: CarriedFigure | null, why: WhyOf): ChangedFigure[] {
  if (before !== null && after !== null && saidOf(before) === saidOf(after)) return [];
  const { name, shownAs } = (after ?? before)!;
  const oneUnit = before?.unit === after?.unit;
  const moved = movedFrom(oneUnit ? before?.value : null, after?.value, before?.interval);
  const resampled = (before ?? after)!.interval !== undefined || after?.interval !== undefined;
  return [{ name, shownAs, before, after, ...moved, ...why(name, resampled) }];
}

/** All that a page says of a value, in one text. */
function saidOf({ value, unit, interval, numerator, denominator, text, why }: CarriedValue): string {
  const limits = interval === undefined ? null : [interval.low, interval.high, interval.confidence, interval.sides];
  return JSON.stringify([value ?? null, unit, limits, numerator, denominator, text, why]);
}
