import { readFileSync } from 'node:fs';

/** A digit string printed in a publication, with how far it may be off. */
export interface Published {
  readonly key: string;
  readonly value: unknown;
  readonly tol: number;
}

/** One worked case: what goes in, and what must come out. */
export interface Case {
  readonly id: string;
  readonly method: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly rel_tol: number;
  readonly published: readonly Published[];
}

/** The cases of a file, or why it cannot be used. */
export type CaseFile = { readonly cases: readonly Case[] } | { readonly fault: string };

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function readCase(value: unknown): Case | null {
  if (!isObject(value)) return null;
  const { id, method, inputs, expected, rel_tol = 1e-8, published = [] } = value;
  if (typeof id !== 'string' || typeof method !== 'string' || typeof rel_tol !== 'number') return null;
  if (!isObject(inputs) || !isObject(expected) || !Array.isArray(published)) return null;
  const printed = published.map(readPublished);
  return printed.includes(null)
    ? null
    : { id, method, inputs, expected, rel_tol, published: printed.filter((p) => p !== null) };
}

function readPublished(value: unknown): Published | null {
  if (!isObject(value) || typeof value.key !== 'string' || typeof value.tol !== 'number') return null;
  return { key: value.key, value: value.value, tol: value.tol };
}

/** Reads a file in the form of statistics.json: an object whose `cases` is a list of worked cases. */
export function readCases(file: string): CaseFile {
  let parsed: unknown;
  try {
    parsed = JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    return { fault: `${file}: cannot be read as JSON (${error instanceof Error ? error.message : String(error)})` };
  }
  if (!isObject(parsed) || !Array.isArray(parsed.cases))
    return { fault: `${file}: wanted an object with a list "cases"` };
  const cases: Case[] = [];
  for (const [index, entry] of parsed.cases.entries()) {
    const one = readCase(entry);
    if (one === null)
      return { fault: `${file}: case ${index + 1} lacks id, method, inputs or expected in the right form` };
    cases.push(one);
  }
  return { cases };
}
