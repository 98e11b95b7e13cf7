import type { KeySpace, Texts } from '../key-space.js';
import type { FileReading } from '../read-file.js';
import { sayingOf } from '../rules/saying-of.js';
import { positionOf, remarkAsSet } from '../set-aside.js';
import type { Alias, UnmatchedWater, WaterRule } from './alias.js';
import { type WaterMatch, WaterNames } from './water-names.js';

/** The waters that were read, each under its own name and region. */
function listedWaters(all: readonly FileReading[]): { readonly aliases: readonly Alias[]; readonly keys: Set<string> } {
  const aliases: Alias[] = [];
  const keys = new Set<string>();
  for (const { draft } of all) {
    if (draft.table.name !== 'waterbodies') continue;
    const textAt = (name: string, row: number): string => {
      const column = draft.columns.get(name);
      const code = column?.values[row] ?? 0;
      return code === 0 ? '' : column!.interner!.textOf(code);
    };
    for (let row = 0; row < draft.rowCount; row++) {
      if (draft.aside[row] === 1) continue;
      const waterbody = textAt('waterbody', row);
      keys.add(waterbody);
      aliases.push({ name: textAt('name', row), region: textAt('region', row), waterbody });
    }
  }
  return { aliases, keys };
}

/** One name in one region, as often as a file writes it. */
interface Written {
  readonly name: string;
  readonly region: string;
  readonly match: WaterMatch;
  times: number;
}

function matchColumn(
  reading: FileReading,
  rule: WaterRule,
  names: WaterNames,
  space: KeySpace,
  texts: Texts,
): Written[] {
  const { draft } = reading;
  const written = draft.columns.get(rule.written.name)!;
  const regions = rule.regionWritten === null ? null : draft.columns.get(rule.regionWritten.name)!;
  const column = draft.columnOf(rule.field, texts);
  column.values = new Uint32Array(draft.rowCount);
  const position = positionOf(reading, rule.written.name);
  /** By the number of the region, then of the name. */
  const met = new Map<number, Map<number, Written>>();
  for (let row = 0; row < draft.rowCount; row++) {
    const nameCode = written.values[row]!;
    if (draft.aside[row] === 1 || nameCode === 0) continue;
    const regionCode = regions?.values[row] ?? 0;
    const inRegion = met.get(regionCode) ?? new Map<number, Written>();
    met.set(regionCode, inRegion);
    let entry = inRegion.get(nameCode);
    if (entry === undefined) {
      const name = written.interner!.textOf(nameCode);
      const region = regionCode === 0 ? rule.region : regions!.interner!.textOf(regionCode);
      entry = { name, region, match: names.match(name, region), times: 0 };
      inRegion.set(nameCode, entry);
    }
    entry.times++;
    const { match } = entry;
    if (match.kind === 'water') column.values[row] = space.interner.codeOfText(match.waterbody);
    else remarkAsSet(reading, row, position, sayingOf(`${match.kind}-water`, match.why));
  }
  return [...met.values()].flatMap((inRegion) => [...inRegion.values()]);
}

/**
 * Puts a water for every name that is known in its region, in the files whose crosswalks match names; the names that are
 * not known come back with how often each was met, the most frequent first.
 */
export function matchWaters(
  own: readonly FileReading[],
  all: readonly FileReading[],
  texts: Texts,
): readonly UnmatchedWater[] {
  const matching = own.filter(({ rule }) => rule.waters.length > 0);
  if (matching.length === 0) return [];
  const listed = listedWaters(all);
  const space = texts.spaceOf('waterbodies');
  const unmatched = new Map<string, UnmatchedWater>();
  for (const reading of matching) {
    const names = new WaterNames([...reading.rule.aliases, ...listed.aliases], listed.keys);
    for (const rule of reading.rule.waters) {
      for (const { name, region, match, times } of matchColumn(reading, rule, names, space, texts)) {
        if (match.kind === 'water') continue;
        const key = JSON.stringify([name, region, match.why]);
        const before = unmatched.get(key)?.times ?? 0;
        const nearest = match.kind === 'unmatched' ? names.nearest(name, region) : '';
        unmatched.set(key, { name, region, times: before + times, nearest, why: match.why });
      }
    }
  }
  const order = (a: UnmatchedWater, b: UnmatchedWater) => b.times - a.times || (a.name < b.name ? -1 : 1);
  return [...unmatched.values()].sort(order);
}
