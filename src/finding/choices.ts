import type { Finding, FindingChoices } from './finding.js';

/** Two thousand resamples with seed 1, where nobody asks for others. */
export const usualResamples: FindingChoices['resamples'] = { count: 2000, seed: 1 };

/** A finding's choices from the option values given; options not given have their usual value. */
export function choicesOf(
  { options = [] }: Pick<Finding, 'options'>,
  given: Readonly<Record<string, string | number>> | ReadonlyMap<string, string | number> = {},
  resamples: FindingChoices['resamples'] = usualResamples,
): FindingChoices {
  const said = given instanceof Map ? given : new Map(Object.entries(given));
  const values = options.flatMap(({ name, usual }): [string, string | number][] => {
    const value = said.get(name) ?? usual;
    return value === null ? [] : [[name, value]];
  });
  return { values: new Map(values), resamples };
}

/** The number that an option was given, or null. */
export function numberChoice({ values }: FindingChoices, name: string): number | null {
  const value = values.get(name);
  return typeof value === 'number' ? value : null;
}

/** The text that an option was given, or null. */
export function textChoice({ values }: FindingChoices, name: string): string | null {
  const value = values.get(name);
  return typeof value === 'string' ? value : null;
}
