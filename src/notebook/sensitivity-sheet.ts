import { numberIn } from '../formula/input-value.js';
import { describeUnit } from '../formula/unit/unit.js';
import type { NumberValue } from '../formula/value/evaluated.js';
import { nearestName } from '../problem/nearest.js';
import { writtenNumber } from '../record/written-numbers.js';
import { type ComputedSheet, emptySheet, saidOf } from './computed-sheet.js';
import type { InputRow, SheetDeclaration, SheetMaker } from './document.js';
import type { SheetColumn, SheetRow } from './evaluated.js';
import { cellProblem } from './formula-cell.js';
import type { Knowledge } from './workings.js';

type FindingMaker = Extract<SheetMaker, { kind: 'finding' }>;

/** The name by which a sheet's sentence asks how far a figure depends on the inputs. */
export const sensitivityName = 'sensitivity';

const column = (name: string, label: string, shownAs: string, meaning: string): SheetColumn => {
  return { name, label, role: name === 'input' ? 'key' : 'value', formula: '', shownAs, meaning };
};

const columnsShown = (shownAs: string): readonly SheetColumn[] => [
  column('input', 'input', 'text', 'What is decided or assumed.'),
  column('range', 'plausible range', 'text', 'From the lowest to the highest plausible value, in the input’s unit.'),
  column('as_is', 'as it is', shownAs, 'The figure with every input as this page has it.'),
  column('at_low', 'at the lowest', shownAs, 'The figure with this input at its lowest plausible value.'),
  column('at_high', 'at the highest', shownAs, 'The figure with this input at its highest plausible value.'),
  column('swing', 'swing', shownAs, 'How far apart those two are.'),
  column('conclusion', 'conclusion', 'text', 'Whether the figure stays on its side of the threshold at both ends.'),
  column('flips_at', 'turns at', 'text', 'The value of the input at which the figure crosses the threshold.'),
];

/** A number written in a cell, or null. */
function written({ text }: InputRow['value']): number | null {
  return numberIn(text);
}

interface Swing {
  readonly name: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly now: number;
}

/** A number as a cell can hold it: digits without an exponent. */
function inDigits(amount: number): string {
  const text = String(amount);
  return text.includes('e-') ? amount.toFixed(20).replace(/0+$/, '') : text;
}

/** Steps of halving between two ends: a thousandth of the range, as close as anyone would read it. */
const halvings = 10;

/** A number with all its digits, in the page’s locale. */
const plainNumber = (value: number): string => writtenNumber(inDigits(value));

/** Four digits: no reader needs more of a value that was found by halving. */
const shortNumber = (value: number): string => plainNumber(Number(value.toPrecision(4)));

/**
 * How a figure moves when each input goes to the ends of its plausible range, the others staying: the widest swing first,
 * and the value at which the figure would cross a threshold (0 unless told). Everything the input reaches is computed
 * again, findings included.
 */
export function sensitivitySheet(declared: SheetDeclaration, maker: FindingMaker, knowledge: Knowledge): ComputedSheet {
  const { file, values, again, ranges = [] } = knowledge;
  const { text: figure } = maker.rows;
  const value = values.get(figure);
  if (value?.kind === 'problem') return emptySheet(declared, []);
  if (value?.kind !== 'number' || again === undefined) {
    const names = [...values].filter(([, one]) => one.kind === 'number').map(([name]) => name);
    const nearest = nearestName(figure, names);
    const remedy = nearest === null ? 'Name a figure that is a number.' : `Did you mean "${nearest}"?`;
    return emptySheet(declared, [cellProblem(file, maker.rows, 'not-a-figure', 'a figure of this notebook', remedy)]);
  }
  const told = maker.options.find(({ name }) => name.text === 'threshold');
  const wrong = maker.options.find((option) => option !== told || written(option.value) === null);
  if (wrong !== undefined) {
    const remedy = 'It can be told a threshold, as a number: with threshold 0.';
    return emptySheet(declared, [cellProblem(file, wrong.name, 'unknown-option', 'threshold and a number', remedy)]);
  }
  const threshold = told === undefined ? 0 : written(told.value)!;
  const swings = ranges.flatMap(({ name, unit, value: cell, low, high }): Swing[] => {
    const [from, now, to] = [written(low), written(cell), written(high)];
    if (from === null || now === null || to === null || !again.reaches(name.text, figure)) return [];
    return [{ name: name.text, unit: unit.text, low: from, high: to, now }];
  });
  const at = (name: string, amount: number): NumberValue | null => {
    const found = again.with(name, inDigits(amount), figure);
    return found?.kind === 'number' ? found : null;
  };
  const rows = swings.map((swing) => swingRow(swing, value, threshold, (amount) => at(swing.name, amount)));
  const ordered = rows.sort((one, other) => (other.width ?? -1) - (one.width ?? -1));
  const turning = ordered.filter(({ turns }) => turns).length;
  const unit = describeUnit(value.unit);
  return {
    sheet: {
      ...saidOf(declared),
      columns: columnsShown(/\bdollars?\b/.test(unit) ? 'dollars' : ''),
      rows: ordered.map(({ row }) => row),
      turnsAt: threshold,
      notes: [
        `Each input moves alone, from the lowest to the highest value that its row calls plausible; ${turning} of ${ordered.length} turn the conclusion, which is whether the figure is above ${shortNumber(threshold)}.`,
        'Inputs without a plausible range, and those that do not reach the figure, are left out. Two inputs that move together can turn what neither turns alone.',
      ],
      problems: [],
    },
    workings: {
      formulas: new Map(),
      needs: [],
      ofRows: [],
      keys: ordered.map(({ row }) => row.cells.slice(0, 1).map((cell) => (cell.kind === 'text' ? cell.text : null))),
      cells: ordered.map(() => new Map()),
    },
    asked: null,
  };
}

function swingRow(
  { name, unit, low, high, now }: Swing,
  value: NumberValue,
  threshold: number,
  at: (amount: number) => NumberValue | null,
): { readonly row: SheetRow; readonly width: number | null; readonly turns: boolean } {
  const ends = [at(low), at(high)] as const;
  const unitOfFigure = describeUnit(value.unit);
  const plain = (number: number | null, why: string): SheetRow['cells'][number] => {
    return number === null ? { kind: 'missing', why } : { ...point, unit: unitOfFigure, value: number };
  };
  const [from, to] = ends.map((end) => end?.value ?? null);
  const width = from === null || to === null ? null : Math.abs(to! - from!);
  const side = (number: number | null | undefined): boolean | null =>
    number === null || number === undefined ? null : number > threshold;
  const as = side(value.value);
  const turned = ([side(from), side(to)] as const).map((end) => end !== null && as !== null && end !== as);
  const flips = turned.flatMap((is, end) =>
    is ? [turningPoint(now, end === 0 ? low : high, as!, threshold, at)] : [],
  );
  const text = (words: string): SheetRow['cells'][number] => ({ kind: 'text', text: words });
  const unknown = side(from) === null || side(to) === null || as === null;
  const words = unit === '' || unit === 'year' ? '' : ` ${unit}`;
  return {
    width,
    turns: turned.includes(true),
    row: {
      cells: [
        text(name.replaceAll('_', ' ')),
        text(`${plainNumber(low)} to ${plainNumber(high)}${words}`),
        plain(value.value, value.why ?? 'no value'),
        plain(from ?? null, ends[0]?.why ?? 'no value there'),
        plain(to ?? null, ends[1]?.why ?? 'no value there'),
        plain(width, 'one end has no value'),
        text(turned.includes(true) ? 'turns' : unknown ? 'cannot be told' : 'stays'),
        text(flips.length === 0 ? 'not within the range' : `${flips.map(shortNumber).join(' and ')}${words}`),
      ],
    },
  };
}

/** A plain number: what a swing shows carries no interval of its own. */
const point = { kind: 'number', numerator: null, denominator: null, interval: null, why: null, cautions: [] } as const;

/** The value between `now` and an end at which the figure crosses the threshold, by halving. */
function turningPoint(
  now: number,
  end: number,
  above: boolean,
  threshold: number,
  at: (amount: number) => NumberValue | null,
): number {
  let [same, other] = [now, end];
  for (let step = 0; step < halvings; step += 1) {
    const middle = (same + other) / 2;
    const value = at(middle)?.value ?? null;
    if (value !== null && value > threshold === above) same = middle;
    else other = middle;
  }
  return (same + other) / 2;
}
