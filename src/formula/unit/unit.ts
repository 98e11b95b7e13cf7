import type { UnitWord } from './word.js';

/** One factor of a unit; a power below 0 divides. */
export interface UnitFactor {
  readonly word: UnitWord;
  readonly power: number;
}

/** A unit as a product of powers, one a dimension; empty for plain numbers and shares. */
export type Unit = readonly UnitFactor[];

/** The unit of plain numbers, shares and rates. */
export const plain: Unit = [];

/** The unit that is one word. */
export function unitOf(word: UnitWord): Unit {
  return [{ word, power: 1 }];
}

function withArticle(one: string): string {
  return /^(?:[aeio]|hour|u(?!ni|se))/.test(one) ? `an ${one}` : `a ${one}`;
}

/** A unit in words: `dollars an inspection`, `minutes`; empty for a plain number. */
export function describeUnit(unit: Unit): string {
  const over = unit.flatMap(({ word, power }) => Array<string>(Math.max(0, power)).fill(word.name));
  const under = unit.flatMap(({ word, power }) => Array<string>(Math.max(0, -power)).fill(word.one));
  if (under.length === 0) return over.join(' × ');
  const divisors = under.map(withArticle);
  if (over.length === 0) return ['per', under[0], ...divisors.slice(1)].join(' ');
  return [over.join(' × '), ...divisors].join(' ');
}

/** A unit as a phrase that a sentence can hold: `a plain number`, `minutes`. */
export function nameUnit(unit: Unit): string {
  return unit.length === 0 ? 'a plain number' : describeUnit(unit);
}
