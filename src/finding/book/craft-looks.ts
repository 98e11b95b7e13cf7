import { components } from '../../record/components.js';
import type { RecordTable } from '../../record/records.js';
import { codeOf, textOf } from './columns-of.js';
import { answer } from './derived-fields.js';

/** What the checks of each inspection say of its craft as a whole, one entry an inspection. */
export interface CraftLooks {
  /** Distinct parts looked at on any side; -1 where the inspection has no check at all. */
  readonly partsLooked: Int16Array;
  /** Distinct parts with mussels on any side; -1 where no part was looked at. */
  readonly partsFouled: Int16Array;
  /** Whether any part had mussels: no only where parts were looked at, missing where none was. */
  readonly mussels: Uint8Array;
  /** Whether any part had attached mussels above trace; missing where stage or abundance was left open, or never told. */
  readonly established: Uint8Array;
}

const mark = { seen: 1, looked: 2, mussels: 4, established: 8, unsettled: 16, openFinding: 32, ruledOut: 64 } as const;

function bitsIn(word: number): number {
  let bits = 0;
  for (let rest = word; rest !== 0; rest &= rest - 1) bits++;
  return bits;
}

/** The marks that one look leaves on its inspection, by the codes of its columns. */
function markOfLook(checks: RecordTable): (row: number) => number {
  const state = textOf(checks, 'state');
  const finding = textOf(checks, 'finding');
  const stage = textOf(checks, 'stage');
  const abundance = textOf(checks, 'abundance');
  const clean = codeOf(state, 'clean');
  const fouled = codeOf(state, 'fouled');
  const mussels = codeOf(finding, 'mussels');
  const attached = codeOf(stage, 'attached');
  const trace = codeOf(abundance, 'trace');
  return (row) => {
    if (state.codes[row] === clean) return mark.seen | mark.looked;
    if (state.codes[row] !== fouled) return mark.seen;
    const looked = mark.seen | mark.looked;
    const found = finding.codes[row]!;
    if (found === 0) return looked | mark.openFinding;
    if (found !== mussels) return looked;
    const stageCode = stage.codes[row]!;
    const abundanceCode = abundance.codes[row]!;
    const ruledOut = (stageCode !== 0 && stageCode !== attached) || abundanceCode === trace;
    if (ruledOut) return looked | mark.mussels | mark.ruledOut;
    const open = stageCode === 0 || abundanceCode === 0;
    return looked | mark.mussels | (open ? mark.unsettled : mark.established);
  };
}

function answersFrom(marks: Uint8Array, yes: number, open: number): Uint8Array {
  return marks.map((marked) => {
    if ((marked & yes) !== 0) return answer.yes;
    if ((marked & open) !== 0 || (marked & mark.looked) === 0) return answer.missing;
    return answer.no;
  });
}

/**
 * Whether records tell established mussels from others at all: where mussels were found and stage and number never written
 * down, that no craft is known to have carried them says nothing, and is no zero.
 */
function tellsDepth(met: number): boolean {
  return (met & mark.unsettled) === 0 || (met & (mark.established | mark.ruledOut)) !== 0;
}

/** What the checks say of each inspection's craft; not checked is not clean. */
export function craftLooks(inspectionCount: number, checks: RecordTable, parentOf: Int32Array): CraftLooks {
  const component = textOf(checks, 'component');
  const place = component.dictionary.map((name) => components.findIndex((entry) => entry.component === name));
  const words = Math.ceil(components.length / 32);
  const looked = new Int32Array(inspectionCount * words);
  const fouled = new Int32Array(inspectionCount * words);
  const marks = new Uint8Array(inspectionCount);
  let met = 0;
  const markOf = markOfLook(checks);
  for (let row = 0; row < checks.rowCount; row++) {
    const parent = parentOf[row]!;
    const marked = markOf(row);
    marks[parent]! |= marked;
    met |= marked;
    const at = place[component.codes[row]!]!;
    if ((marked & mark.looked) !== 0 && at >= 0) looked[parent * words + (at >> 5)]! |= 1 << (at & 31);
    if ((marked & mark.mussels) !== 0 && at >= 0) fouled[parent * words + (at >> 5)]! |= 1 << (at & 31);
  }
  const partsLooked = new Int16Array(inspectionCount).fill(-1);
  const partsFouled = new Int16Array(inspectionCount).fill(-1);
  const partsIn = (bits: Int32Array, row: number): number => {
    let parts = 0;
    for (let word = 0; word < words; word++) parts += bitsIn(bits[row * words + word]!);
    return parts;
  };
  for (let row = 0; row < inspectionCount; row++) {
    if (marks[row] === 0) continue;
    partsLooked[row] = partsIn(looked, row);
    if (partsLooked[row]! > 0) partsFouled[row] = partsIn(fouled, row);
  }
  return {
    partsLooked,
    partsFouled,
    mussels: answersFrom(marks, mark.mussels, mark.openFinding),
    established: tellsDepth(met)
      ? answersFrom(marks, mark.established, mark.unsettled | mark.openFinding)
      : new Uint8Array(inspectionCount).fill(answer.missing),
  };
}
