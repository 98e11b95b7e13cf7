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

/** Names, each once in the order in which they are first met, with how often they were met together. */
function together(names: Iterable<UnmatchedWater>): readonly UnmatchedWater[] {
  const all = new Map<string, UnmatchedWater>();
  for (const one of names) {
    const key = JSON.stringify([one.name, one.region, one.why]);
    all.set(key, { ...one, times: one.times + (all.get(key)?.times ?? 0) });
  }
  return [...all.values()];
}

/** The names of several files that match no water, with how often each was met, the most frequent first. */
export function unmatchedOf(files: Iterable<MatchedWaters>): readonly UnmatchedWater[] {
  const order = (a: UnmatchedWater, b: UnmatchedWater) => b.times - a.times || (a.name < b.name ? -1 : 1);
  return [...together([...files].flatMap(({ unmatched }) => unmatched))].sort(order);
}

/** What matching gave in one file: the names that match no water, and how many remarks the file has with those on them. */
export interface MatchedWaters {
  readonly unmatched: readonly UnmatchedWater[];
  readonly remarks: number;
}

/**
 * Puts a water for every name that is known in its region, in the files whose crosswalks match names, and gives what became
 * of each such file. In a file taken from an import before, whose matches still hold, they stand already.
 */
export function matchWaters(
  own: readonly FileReading[],
  all: readonly FileReading[],
  texts: Texts,
): ReadonlyMap<FileReading, MatchedWaters> {
  const matching = own.filter(({ rule }) => rule.waters.length > 0);
  if (matching.length === 0) return new Map();
  const listed = listedWaters(all);
  const space = texts.spaceOf('waterbodies');
  return new Map(
    matching.map((reading): [FileReading, MatchedWaters] => {
      const { remarks, rule, unmatchedBefore } = reading;
      if (unmatchedBefore !== null) return [reading, { unmatched: unmatchedBefore, remarks: remarks.size }];
      const names = new WaterNames([...rule.aliases, ...listed.aliases], listed.keys);
      const written = rule.waters.flatMap((water) => matchColumn(reading, water, names, space, texts));
      const unmatched = written.flatMap(({ name, region, match, times }): readonly UnmatchedWater[] => {
        if (match.kind === 'water') return [];
        const nearest = match.kind === 'unmatched' ? names.nearest(name, region) : '';
        return [{ name, region, times, nearest, why: match.why }];
      });
      return [reading, { unmatched: together(unmatched), remarks: remarks.size }];
    }),
  );
}
