/**
 * One word of a unit. Words of one dimension convert: a value in the dimension's base is (value − zero) × size. Every
 * counted thing (inspections, looks, washes, craft) is a dimension of its own.
 */
export interface UnitWord {
  /** As a heading shows it: `hours`. */
  readonly name: string;
  /** For one of it: `hour`. */
  readonly one: string;
  readonly dimension: string;
  readonly size: number;
  /** Where its scale begins, in its own steps; only temperatures have one that is not 0. */
  readonly zero: number;
}

function measured(dimension: string, name: string, one: string, size: number, zero = 0): UnitWord {
  return { name, one, dimension, size, zero };
}

/** A person's hour is kept apart from an hour by the clock: they are never added, but a wage by the hour pays either. */
const measures: readonly UnitWord[] = [
  measured('money', 'dollars', 'dollar', 1),
  measured('time', 'seconds', 'second', 1),
  measured('time', 'minutes', 'minute', 60),
  measured('time', 'hours', 'hour', 3_600),
  measured('time', 'days', 'day', 86_400),
  measured('time', 'weeks', 'week', 604_800),
  measured('work', 'staff hours', 'staff hour', 3_600),
  measured('work', 'person-hours', 'person-hour', 3_600),
  measured('calendar', 'years', 'year', 1),
  // The international foot is 0.3048 m exactly (Federal Register 24 FR 5348, 1959).
  measured('length', 'metres', 'metre', 1),
  measured('length', 'feet', 'foot', 0.3048),
  // t/°C = (t/°F − 32) / 1.8 (NIST SP 811, B.8).
  measured('temperature', 'degrees C', 'degree C', 1),
  measured('temperature', 'degrees F', 'degree F', 5 / 9, 32),
  measured('temperature', 'kelvins', 'kelvin', 1, 273.15),
  measured('temperature difference', 'degrees C of difference', 'degree C of difference', 1),
  measured('temperature difference', 'degrees F of difference', 'degree F of difference', 5 / 9),
];

const counted = [
  'inspections',
  'looks',
  'washes',
  'station days',
  'wash units',
  'stations',
  'waters',
  'entries',
  'files',
  'problem kinds',
  'problems',
  'rows',
  'parts',
  'craft',
  'lanes',
  'people',
  'seasons',
];

const otherSpellings: Readonly<Record<string, string>> = {
  meters: 'metres',
  meter: 'metres',
  '°F': 'degrees F',
  '°C': 'degrees C',
  'station-days': 'station days',
  'staff-hours': 'staff hours',
  'person hours': 'person-hours',
  person: 'people',
};

/** The word for one of a plural: `wash` of `washes`, `entry` of `entries`. */
export function oneOf(plural: string): string {
  if (plural === 'people') return 'person';
  if (plural.endsWith('ies')) return `${plural.slice(0, -3)}y`;
  if (/(?:ch|sh|s|x|z)es$/.test(plural)) return plural.slice(0, -2);
  return plural.endsWith('s') ? plural.slice(0, -1) : plural;
}

/** A thing that is counted, as a unit word of its own dimension. */
export function countedWord(name: string): UnitWord {
  return { name, one: oneOf(name), dimension: `counted ${name}`, size: 1, zero: 0 };
}

/** Every unit word known without a book, in the order in which a list shows them. */
export const unitWords: readonly UnitWord[] = [...measures, ...counted.map(countedWord)];

const bySpelling = new Map<string, UnitWord>(
  unitWords.flatMap((word): [string, UnitWord][] => [
    [word.name, word],
    [word.one, word],
  ]),
);
for (const [spelling, name] of Object.entries(otherSpellings)) bySpelling.set(spelling, bySpelling.get(name)!);

/** The unit word of that spelling, in plural, singular or another known spelling; null when there is none. */
export function unitWord(spelling: string): UnitWord | null {
  return bySpelling.get(spelling) ?? null;
}
