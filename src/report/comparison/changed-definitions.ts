import type { CarriedInput, PageResults } from '../results/page-results.js';
import type { ChangedDefinition, ChangedInput } from './comparison.js';

/** Every name of a notebook but its inputs, with the text that defines it. */
function definitionsOf({ figures, selections, sheets }: PageResults): ReadonlyMap<string, string> {
  return new Map([
    ...selections.map(({ name, formula }) => [name, formula] as const),
    ...figures.map(({ name, formula }) => [name, formula] as const),
    ...sheets.map(({ name, sentence, columns }) => {
      const formulas = columns.filter(({ formula }) => formula !== '');
      return [name, [sentence, ...formulas.map((column) => `${column.name} = ${column.formula}`)].join('\n')] as const;
    }),
  ]);
}

/** Names in the order in which they first stand in either of two lists. */
function allOf(one: Iterable<string>, other: Iterable<string>): readonly string[] {
  return [...new Set([...one, ...other])];
}

/** The definitions that are not the same text in both. */
export function changedDefinitions(before: PageResults, after: PageResults): readonly ChangedDefinition[] {
  const [was, is] = [definitionsOf(before), definitionsOf(after)];
  return allOf(is.keys(), was.keys())
    .map((name) => ({ name, before: was.get(name) ?? null, after: is.get(name) ?? null }))
    .filter((definition) => definition.before !== definition.after);
}

/** The inputs whose value or unit is not the same in both; another source alone moves nothing. */
export function changedInputs(before: PageResults, after: PageResults): readonly ChangedInput[] {
  const byName = ({ inputs }: PageResults) => new Map(inputs.map((input) => [input.name, input]));
  const [was, is] = [byName(before), byName(after)];
  return allOf(is.keys(), was.keys())
    .map((name) => ({ name, before: was.get(name) ?? null, after: is.get(name) ?? null }))
    .filter((input) => !sameInput(input.before, input.after));
}

function sameInput(one: CarriedInput | null, other: CarriedInput | null): boolean {
  if (one === null || other === null) return one === other;
  return one.value === other.value && one.text === other.text && one.unit === other.unit && one.why === other.why;
}
