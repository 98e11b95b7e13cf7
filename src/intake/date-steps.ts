import { longNames, type MonthName, shortNames } from './month-names.js';

/** A part of a date or time of day. */
export type Part = 'year' | 'month' | 'day' | 'hour' | 'minute' | 'second' | 'fraction' | 'half' | 'offset';

/** One step of reading a date: what must stand there next. */
export type Step =
  | { readonly kind: 'literal'; readonly byte: number }
  /** A space before `a`, which many leave out. */
  | { readonly kind: 'loose space' }
  | {
      readonly kind: 'digits';
      readonly part: Part;
      readonly least: number;
      readonly most: number;
      /** How many digits of other parts follow without anything between, as the minutes in `Hmm`. */
      readonly behind: number;
    }
  | { readonly kind: 'month name'; readonly names: readonly MonthName[] }
  | { readonly kind: 'half' }
  | { readonly kind: 'offset'; readonly colon: boolean; readonly minutes: boolean };

function digits(part: Part, least: number, most = least): Step {
  return { kind: 'digits', part, least, most, behind: 0 };
}

/** What each run of letters asks for, as UTS #35 gives them their meaning; names of months are English or French. */
export const dateLetters: Readonly<Record<string, Step>> = {
  yyyy: digits('year', 4),
  yy: digits('year', 2),
  MMMM: { kind: 'month name', names: longNames },
  MMM: { kind: 'month name', names: shortNames },
  MM: digits('month', 2),
  M: digits('month', 1, 2),
  dd: digits('day', 2),
  d: digits('day', 1, 2),
  HH: digits('hour', 2),
  H: digits('hour', 1, 2),
  hh: digits('hour', 2),
  h: digits('hour', 1, 2),
  mm: digits('minute', 2),
  ss: digits('second', 2),
  SSS: digits('fraction', 3),
  a: { kind: 'half' },
  XXX: { kind: 'offset', colon: true, minutes: true },
  XX: { kind: 'offset', colon: false, minutes: true },
  X: { kind: 'offset', colon: false, minutes: false },
};

/** The part that a step reads; null for text that stands for itself. */
export function partOf(step: Step): Part | null {
  if (step.kind === 'digits') return step.part;
  if (step.kind === 'month name') return 'month';
  return step.kind === 'half' || step.kind === 'offset' ? step.kind : null;
}

/** How many digits stand behind each step that may take one or two; null where that cannot be told. */
function withDigitsBehind(steps: readonly Step[]): readonly Step[] | null {
  const counted = [...steps];
  for (let index = 0; index < steps.length; index++) {
    const step = steps[index]!;
    if (step.kind !== 'digits' || step.least === step.most) continue;
    let behind = 0;
    for (let next = index + 1; steps[next]?.kind === 'digits'; next++) {
      const other = steps[next] as Extract<Step, { kind: 'digits' }>;
      if (other.least !== other.most) return null;
      behind += other.least;
    }
    counted[index] = { ...step, behind };
  }
  return counted;
}

/** The steps of a pattern with the letters that made them, or a sentence saying why there are none. */
export function readSteps(
  text: string,
): { readonly steps: readonly Step[]; readonly runs: readonly string[] } | string {
  const steps: Step[] = [];
  const runs: string[] = [];
  for (const [piece] of text.matchAll(/'(?:[^']|'')*'|([A-Za-z])\1*|[\s\S]/gu)) {
    if (/^[A-Za-z]/u.test(piece)) {
      const step = dateLetters[piece];
      if (step === undefined) return `"${piece}" is none of the letters ${Object.keys(dateLetters).join(' ')}`;
      const before = steps.at(-1);
      if (step.kind === 'half' && before?.kind === 'literal' && before.byte === 32)
        steps.splice(-1, 1, { kind: 'loose space' });
      steps.push(step);
      runs.push(piece);
    } else {
      if (piece === "'") return 'a quote is not closed';
      const plain = piece.startsWith("'") ? piece.slice(1, -1).replaceAll("''", "'") || "'" : piece;
      for (const byte of new TextEncoder().encode(plain)) steps.push({ kind: 'literal', byte });
    }
  }
  const counted = withDigitsBehind(steps);
  return counted === null ? 'two parts of one or two digits stand side by side' : { steps: counted, runs };
}
