import { parse } from 'yaml';
import { nearestName } from '../problem/nearest.js';
import type { Problem } from '../problem/problem.js';
import { inDocument } from '../problem/problem.js';
import { numberWritings } from '../record/written-numbers.js';
import type { Settings } from './document.js';

/** The settings a notebook has when its head says nothing. */
export const usualSettings: Settings = {
  for: '',
  seed: 1,
  resamples: 2000,
  filters: null,
  public: false,
  withhold_under: 10,
};

function wholeBetween(value: unknown, least: number, most: number): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most;
}

interface Check {
  readonly wanted: string;
  readonly holds: (value: unknown) => boolean;
}

const checks: Readonly<Record<keyof Settings, Check>> = {
  for: { wanted: 'a phrase', holds: (value) => typeof value === 'string' },
  seed: {
    wanted: 'a whole number from 0 to 4,294,967,295',
    holds: (value) => wholeBetween(value, 0, 0xffffffff),
  },
  resamples: {
    wanted: 'a whole number from 200 to 20,000',
    holds: (value) => wholeBetween(value, 200, 20_000),
  },
  public: {
    wanted: '"yes" or "no"',
    holds: (value) => typeof value === 'boolean' || value === 'yes' || value === 'no',
  },
  withhold_under: {
    wanted: 'a whole number from 3 to 1,000',
    holds: (value) => wholeBetween(value, 3, 1000),
  },
  filters: {
    wanted: 'names of fields in square brackets, such as [station, month], or empty ones',
    holds: (value) => Array.isArray(value) && value.every((name) => typeof name === 'string'),
  },
  layout: { wanted: 'page or brief', holds: (value) => value === 'page' || value === 'brief' },
  locale: {
    wanted: Object.keys(numberWritings).join(', '),
    holds: (value) => typeof value === 'string' && Object.hasOwn(numberWritings, value),
  },
};

/** The settings by name: what every object has, such as `constructor`, is none of them. */
const checkOf = new Map<string, Check>(Object.entries(checks));

/** What a head in YAML gives; null where it is no list of names and values. */
function givenIn(head: string): object | null {
  if (head.trim() === '') return {};
  try {
    const given: unknown = parse(head);
    return typeof given === 'object' && !Array.isArray(given) ? given : null;
  } catch {
    return null;
  }
}

/** The settings written at a notebook's head in YAML; its mistakes are added, and the usual settings stand in for them. */
export function readSettings(file: string, head: string, problems: Problem[]): Settings {
  const bad = (line: number, code: string, seen: string, wanted: string, remedy: string): void => {
    problems.push({
      code,
      severity: 'sets aside',
      place: inDocument(file, line, 1),
      seen,
      wanted,
      remedy,
    });
  };
  const given = givenIn(head);
  if (given === null) {
    const wanted = 'settings as "name: value", a line each';
    bad(1, 'not-yaml', head.split('\n')[0] ?? '', wanted, 'Correct the lines between the hyphens.');
    return usualSettings;
  }
  const settings: Record<string, unknown> = { ...usualSettings };
  for (const [name, value] of Object.entries(given)) {
    const line = head.split('\n').findIndex((text) => text.trimStart().startsWith(`${name}:`)) + 2;
    const check = checkOf.get(name);
    if (check === undefined) {
      const nearest = nearestName(name, checkOf.keys());
      const remedy =
        nearest === null ? `Settings are ${[...checkOf.keys()].join(', ')}.` : `Did you mean "${nearest}"?`;
      bad(line, 'unknown-setting', name, 'a setting of a notebook', remedy);
    } else if (!check.holds(value)) {
      bad(line, 'bad-setting', String(value), `${check.wanted} for "${name}"`, 'Correct the value.');
    } else settings[name] = name === 'public' ? value === true || value === 'yes' : value;
  }
  return settings as unknown as Settings;
}
