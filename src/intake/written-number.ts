import type { NumberField } from '../record/field.js';
import { type Fault, fault } from './fault.js';
import { type NumberMarks, numberSource, plainDigits } from './number-marks.js';
import { conversionTo, converted, unitSpelt } from './units.js';

/** Units in which one measure may be written together, the larger first: 22 ft 6 in. */
const together: readonly (readonly string[])[] = [
  ['feet', 'inches'],
  ['metres', 'centimetres'],
  ['hours', 'minutes', 'seconds'],
  ['years', 'months'],
];

/** A number in the unit of its field, or what is wrong with its text. */
export type WrittenNumber = { readonly value: number } | { readonly fault: Fault };

interface Measure {
  readonly digits: string;
  /** As spelt; blank for none. */
  readonly spelling: string;
}

/** Money that is set in brackets, as ledgers write what was paid back, with a minus sign in their place. */
function withoutBrackets(text: string, field: NumberField): string {
  const inner = conversionTo(field.unit, 'dollars') === null ? null : /^\(\s*([^-+()]+)\)$/u.exec(text);
  return inner === null ? text : `-${inner[1]!.trim()}`;
}

/** The numbers of a text, each with what is written behind it; null where something else stands among them. */
function measuresOf(text: string, marks: NumberMarks): readonly Measure[] | null {
  const money = /^([-+]?)\s*\$\s*/u.exec(text);
  const plain = money === null ? text : `${money[1]}${text.slice(money[0].length)} $`;
  const expression = new RegExp(`([-+]?${numberSource(marks)})\\s*([^\\d\\s.,+-][^\\d+-]*)?`, 'uy');
  const measures: Measure[] = [];
  while (expression.lastIndex < plain.length) {
    const found = expression.exec(plain);
    if (found === null) return null;
    measures.push({ digits: found[1]!, spelling: (found[2] ?? '').trim() });
  }
  return measures;
}

/** Whether a unit may follow another in one measure. */
function mayFollow(unit: string, earlier: string): boolean {
  const group = together.find((units) => units.includes(earlier)) ?? [];
  return group.indexOf(unit) > group.indexOf(earlier);
}

/**
 * A number that is written with its unit: `22 ft`, `22'6"`, `6.7 m`, `60 °C`, `$1,200`, `($55)` for a refund. One without a unit is in the unit
 * `otherwise`, where that is given.
 */
export function readWrittenNumber(
  text: string,
  field: NumberField,
  otherwise: string | null,
  marks: NumberMarks,
): WrittenNumber {
  const measures = measuresOf(withoutBrackets(text, field), marks);
  if (measures === null || measures.length === 0) return { fault: fault.notANumber };
  let value = 0;
  let earlier: string | null = null;
  for (const { digits, spelling } of measures) {
    const unit = spelling === '' && measures.length === 1 ? otherwise : unitSpelt(spelling);
    const conversion = unit === null ? null : conversionTo(field.unit, unit);
    if (unit === null || conversion === null) return { fault: fault.unknownUnit };
    if (earlier !== null && (!mayFollow(unit, earlier) || /^[-+]/u.test(digits))) return { fault: fault.unknownUnit };
    earlier = unit;
    value += converted(Number(plainDigits(digits, marks)), conversion);
  }
  return { value };
}
