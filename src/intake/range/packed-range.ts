import type { PackedAsideTexts } from '../aside-texts.js';
import type { Draft } from '../draft.js';
import type { Growable } from '../growing.js';
import type { Interner, PackedTexts } from '../interner.js';
import type { LeftOutRow } from '../leave-out.js';
import type { MissingTimes } from '../missing-times.js';
import type { RowsRead } from '../read-rows.js';
import type { PackedRemarks } from '../remarks.js';
import type { PackedPlaces } from '../row-places.js';

/** One drafted column of a range. */
export interface PackedColumn {
  readonly field: string;
  /** Which of the range's numberings its texts have; null for numbers, for codes of a list, and for the import's numbering. */
  readonly texts: number | null;
  values: Growable;
}

/** What the rows between two places of a file gave, as plain values that one thread hands to another. */
export interface PackedRange {
  /** Where its first row begins, as far as the range itself can tell, and where the row behind its last one does. */
  readonly start: number;
  readonly end: number;
  /** How many physical lines it has; lines are counted from its own beginning. */
  readonly lines: number;
  readonly rowCount: number;
  readonly read: number;
  readonly leftOut: readonly LeftOutRow[];
  readonly missing: MissingTimes;
  readonly undecodable: number;
  readonly endless: number | null;
  readonly columns: readonly PackedColumn[];
  readonly texts: readonly PackedTexts[];
  readonly places: PackedPlaces;
  readonly aside: Uint8Array;
  readonly folded: Uint16Array;
  readonly lostKeys: readonly number[];
  /** Which of the numberings the lost keys have; null for that of the import. */
  readonly lostKeyTexts: number | null;
  readonly remarks: PackedRemarks;
  readonly asideTexts: PackedAsideTexts;
}

/** Packs what was read of a range. */
export function packRange(
  draft: Draft,
  rows: RowsRead,
  sharesTexts: boolean,
  place: { readonly start: number; readonly end: number; readonly lines: number },
): PackedRange {
  const numberings: Interner[] = [];
  const placeOf = (interner: Interner | null): number | null => {
    if (interner === null || sharesTexts) return null;
    if (!numberings.includes(interner)) numberings.push(interner);
    return numberings.indexOf(interner);
  };
  const columns = [...draft.columns.values()].map(({ field, interner, values }): PackedColumn => {
    return { field: field.name, texts: placeOf(interner), values };
  });
  const lostKeyTexts = placeOf(draft.columns.get(draft.table.key[0]!)?.interner ?? null);
  const { read, leftOut, missing, undecodable, endless, remarks, asideTexts } = rows;
  return {
    ...place,
    rowCount: draft.rowCount,
    read,
    leftOut,
    missing,
    undecodable,
    endless,
    columns,
    texts: numberings.map((interner) => {
      interner.settle();
      return interner.pack();
    }),
    places: draft.places.pack(),
    aside: draft.aside,
    folded: draft.folded,
    lostKeys: draft.lostKeys,
    lostKeyTexts,
    remarks: remarks.pack(),
    asideTexts: asideTexts.pack(),
  };
}

/** The memory of plain values, which moves with them from thread to thread. */
export function memoryOf(value: unknown, found = new Set<ArrayBuffer>()): ReadonlySet<ArrayBuffer> {
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer) found.add(value.buffer);
  } else if (Array.isArray(value)) {
    // Long lists hold plain numbers alone.
    if (typeof value[0] === 'object') for (const entry of value) memoryOf(entry, found);
  } else if (typeof value === 'object' && value !== null) {
    for (const entry of Object.values(value)) memoryOf(entry, found);
  }
  return found;
}
