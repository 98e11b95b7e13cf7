import { fieldOf } from '../../record/field.js';
import type { UnmatchedWater } from '../waters/alias.js';
import { WaterNames } from '../waters/water-names.js';
import { missingMarks, profilesOf } from './column-profile.js';
import { wordsOf } from './heading.js';
import { type DraftedFile, type KnownList, listOf } from './known-list.js';
import type { ColumnProposal, FileProposal, WaterProposal } from './proposal.js';
import { holdsNames } from './propose-keys.js';

/** A file whose names of waters are matched, and the names that match none: the beginning of a file of aliases. */
export interface MatchedWaters {
  readonly proposal: FileProposal;
  readonly unmatched: readonly UnmatchedWater[];
}

/** Texts that are no keys may be slips of the hand up to this share of the filled rows. */
const mostSlips = 0.02;

interface Column {
  readonly heading: string;
  readonly texts: readonly string[];
}

function columnsOf({ kind }: DraftedFile): readonly Column[] {
  const rows = kind.samples.flatMap((sample) => sample.rows);
  const textOf = (text: string | undefined) => (text === undefined || missingMarks.includes(text) ? '' : text);
  return kind.samples[0]!.headings.map((heading, at) => ({ heading, texts: rows.map((row) => textOf(row[at])) }));
}

/** The column beside one of names that holds regions of the list and shares a word with it, as `last_state` with `last_water`. */
function regionBeside(name: Column, columns: readonly Column[], regions: ReadonlySet<string>): string | null {
  const words = new Set(wordsOf(name.heading));
  const fitting = columns.filter(({ heading, texts }) => {
    const filled = texts.filter((text) => text !== '');
    const known = filled.filter((text) => regions.has(text.toLowerCase())).length;
    const isBeside = heading !== name.heading && wordsOf(heading).some((word) => words.has(word));
    return isBeside && filled.length > 0 && known * 2 >= filled.length;
  });
  return fitting.length === 1 ? fitting[0]!.heading : null;
}

function regionQuestion(water: WaterProposal, regions: readonly string[]): readonly string[] {
  if (water.regionColumn !== null) return [];
  const told = 'A name means a water in its own region only. Name the column that tells it as region_column, or ';
  if (water.region === null) return [`${told}the one region of all these names as region: ${regions.join(', ')}.`];
  return [`${told}say whether all these names lie in ${water.region}, the one region of the list.`];
}

function matched(proposal: ColumnProposal, water: WaterProposal, regions: readonly string[], open: number) {
  const waiting =
    open === 0 ? [] : [`${open} different names match no water: fill in the file of aliases, then take this away.`];
  return {
    ...proposal,
    codes: null,
    water,
    sureness: proposal.sureness === 'unsure' || open > 0 ? 'unsure' : 'likely',
    why: `${proposal.why}; names, not keys of the list of waters`,
    questions: [...proposal.questions, ...regionQuestion(water, regions), ...waiting],
  } as const;
}

/**
 * Where a column that refers to waters holds names in the place of keys: its names matched by region, and those that match
 * none by how often they were met, the most frequent first. No name is matched, or called near, across regions.
 */
export function proposeWaters(file: DraftedFile, lists: readonly KnownList[]): MatchedWaters {
  const list = listOf(lists, 'waterbodies');
  if (list === null) return { proposal: file.proposal, unmatched: [] };
  const names = new WaterNames(list.names, list.keys);
  const regions = [...new Set(list.names.map(({ region }) => region).filter((region) => region !== ''))].sort();
  const known = new Set(regions.map((region) => region.toLowerCase()));
  const columns = columnsOf(file);
  const { headings } = file.kind.samples[0]!;
  const profiles = profilesOf(
    headings,
    file.kind.samples.flatMap(({ rows }) => rows),
  );
  const unmatched = new Map<string, UnmatchedWater>();
  const regionColumns = new Set<string>();
  const proposed = file.proposal.columns.map((proposal): ColumnProposal => {
    const field = proposal.use.kind === 'field' ? fieldOf(file.proposal.table, proposal.use.field) : null;
    if (field?.type !== 'reference' || field.to !== 'waterbodies' || field.required === true) return proposal;
    const column = columns.find(({ heading }) => heading === proposal.column)!;
    if (!holdsNames(profiles.find(({ heading }) => heading === proposal.column)!)) return proposal;
    const filled = column.texts.filter((text) => text !== '').length;
    const foreign = column.texts.filter((text) => text !== '' && !list.keys.has(text)).length;
    if (foreign <= filled * mostSlips) return proposal;
    const regionColumn = regionBeside(column, columns, known);
    const region = regionColumn === null && regions.length === 1 ? regions[0]! : null;
    if (regionColumn !== null) regionColumns.add(regionColumn);
    const regionTexts = columns.find(({ heading }) => heading === regionColumn)?.texts;
    let open = 0;
    for (const [row, name] of column.texts.entries()) {
      const where = regionTexts?.[row] || region || '';
      const match = name === '' ? null : names.match(name, where);
      // Without any region most names wait for the answer on regions, and for no alias.
      if (match === null || match.kind === 'water' || (match.kind === 'ambiguous' && where === '')) continue;
      const key = JSON.stringify([name, where]);
      const before = unmatched.get(key);
      if (before === undefined) open++;
      const nearest = before?.nearest ?? names.nearest(name, where);
      unmatched.set(key, { name, region: where, times: (before?.times ?? 0) + 1, nearest, why: match.why });
    }
    return matched(proposal, { regionColumn, region }, regions, open);
  });
  const order = (a: UnmatchedWater, b: UnmatchedWater) => b.times - a.times || (a.name < b.name ? -1 : 1);
  return {
    proposal: { ...file.proposal, columns: proposed.filter(({ column }) => !regionColumns.has(column)) },
    unmatched: [...unmatched.values()].sort(order),
  };
}
