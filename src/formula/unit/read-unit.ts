import { nearestName } from '../../problem/nearest.js';
import { multiplyUnits } from './product.js';
import { plain, type Unit, unitOf } from './unit.js';
import { countedWord, oneOf, unitWord, unitWords } from './word.js';

/** A unit as a person wrote it: its unit, and what a number beside it is multiplied and divided by (100 for percent). */
export type ReadUnit =
  | { readonly unit: Unit; readonly factor: number; readonly divisor: number }
  | { readonly unknown: string; readonly nearest: string | null };

/**
 * The unit that words stand for: `minutes`, `dollars an hour`, `dollars per wash`; nothing and `year` are plain numbers,
 * `percent` and `per 1,000` plain numbers scaled. `counted` are further things that are counted, such as a book's. Unknown
 * words are told with the nearest known one.
 */
export function readUnit(words: string, counted: Iterable<string> = []): ReadUnit {
  const text = words.trim().replace(/\s+/g, ' ');
  if (text === '' || text === 'year' || text === 'number') return { unit: plain, factor: 1, divisor: 1 };
  if (text === 'percent') return { unit: plain, factor: 1, divisor: 100 };
  const per = /^per (\d{1,3}(?:,\d{3})*|\d+)$/.exec(text);
  if (per !== null && Number(per[1]!.replaceAll(',', '')) > 0) {
    return { unit: plain, factor: 1, divisor: Number(per[1]!.replaceAll(',', '')) };
  }
  const further = [...counted];
  const lone = /^per (.+)$/.exec(text);
  const [over, ...under] =
    lone === null ? text.split(/ (?:an?|per) | ?\/ ?/) : ['', ...lone[1]!.split(/ (?:an?|per) /)];
  let unit: Unit = plain;
  let factor = 1;
  const parts = [
    ...(over === '' ? [] : over!.split(/ ?× ?/).map((spelling) => ({ spelling, power: 1 as const }))),
    ...under.map((spelling) => ({ spelling, power: -1 as const })),
  ];
  for (const { spelling, power } of parts) {
    const own = further.find((name) => name === spelling || oneOf(name) === spelling);
    const word = unitWord(spelling) ?? (own === undefined ? null : countedWord(own));
    if (word === null) {
      const known = [...unitWords.flatMap(({ name, one }) => [name, one]), ...further, 'percent'];
      return { unknown: spelling, nearest: nearestName(spelling, known) };
    }
    const product = multiplyUnits(unit, unitOf(word), power);
    unit = product.unit;
    factor *= product.factor;
  }
  return { unit, factor, divisor: 1 };
}

/** The unit of a book's field or count, whose words are taken as they are: an unknown one counts things of its own. */
export function recordedUnit(words: string | null): Unit {
  if (words === null) return plain;
  const read = readUnit(words);
  return 'unit' in read ? read.unit : unitOf(countedWord(words));
}
