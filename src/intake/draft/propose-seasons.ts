import { fieldOf } from '../../record/field.js';
import { type ColumnProfile, profilesOf } from './column-profile.js';
import type { DraftedFile } from './known-list.js';
import type { ColumnProposal, FileProposal } from './proposal.js';
import { rowsByYear, seasonFieldOf } from './rows-by-year.js';

/** How often a text is met in each year, beside how many rows of the year have any text. */
interface YearlyTimes {
  readonly year: number;
  readonly times: number;
  readonly filled: number;
}

/** So many times a text must have been expected in a year for its absence to tell: under one chance in a thousand, by Poisson. */
const expectedLeast = 7;

/** A text met so many times less than expected is met by slips of the hand alone. */
const slips = 20;

/** How many times more or less of the rows a text must be, and how often it must be met, for the change to be asked about. */
const jump = 3;
const jumpLeast = 20;

/** What the years tell of a text: absent from some where it should have been met, or met much more or less often. */
interface TextOverYears {
  readonly text: string;
  /** The seasons in which it is met, as a crosswalk writes them; null where they are all, or have a gap. */
  readonly seasons: string | null;
  readonly said: string;
}

function overYears(text: string, yearly: readonly YearlyTimes[]): TextOverYears | null {
  const all = { times: 0, filled: 0 };
  for (const { times, filled } of yearly) {
    all.times += times;
    all.filled += filled;
  }
  const absent = yearly.filter(({ times, filled }) => {
    const expected = (filled * (all.times - times)) / Math.max(1, all.filled - filled);
    return expected >= expectedLeast && times * slips <= expected;
  });
  const met = yearly.filter((one) => one.times > 0 && !absent.includes(one));
  if (met.length === 0) return null;
  const [first, last] = [met[0]!.year, met.at(-1)!.year];
  if (absent.length > 0) {
    const isGap = absent.some(({ year }) => year > first && year < last);
    const from = absent.some(({ year }) => year < first) ? String(first) : '';
    const to = absent.some(({ year }) => year > last) ? String(last) : '';
    const seasons = isGap ? null : from === to ? from : `${from}-${to}`;
    const when = met.map(({ year }) => year).join(', ');
    return { text, seasons, said: `${text} is met in ${when} only` };
  }
  for (const [at, one] of yearly.entries()) {
    const next = yearly[at + 1];
    if (next === undefined || Math.min(one.times, next.times) === 0) continue;
    const ratio = next.times / next.filled / (one.times / one.filled);
    if (Math.max(one.times, next.times) < jumpLeast || (ratio < jump && ratio > 1 / jump)) continue;
    const percent = ({ times, filled }: YearlyTimes) => `${((times / filled) * 100).toFixed(1)} %`;
    return {
      text,
      seasons: null,
      said: `${text} goes from ${percent(one)} in ${one.year} to ${percent(next)} in ${next.year}`,
    };
  }
  return null;
}

function withSeasons(
  proposal: ColumnProposal,
  byYear: ReadonlyMap<number, ColumnProfile>,
  field: string | null,
): ColumnProposal {
  const found = [...proposal.codes!.keys()].flatMap((text): readonly TextOverYears[] => {
    const yearly = [...byYear].map(([year, { values, filled }]) => {
      const times = values.find(([value]) => value === text)?.[1] ?? 0;
      return { year, times, filled };
    });
    const told = yearly.some(({ times }) => times > 0) ? overYears(text, yearly) : null;
    return told === null ? [] : [told];
  });
  if (found.length === 0) return proposal;
  // Where no date tells the season of a row, a code cannot hold for some seasons only.
  const seasons =
    field === null ? [] : found.flatMap(({ text, seasons }) => (seasons === null ? [] : [[text, seasons] as const]));
  const how =
    field === null
      ? 'If one did, name the files of those years apart, each with its own codes.'
      : 'If one did, write each meaning with its seasons.';
  const said = found.map((one) => one.said).join('; ');
  const question = `${said}. Did any text of this column change its meaning between those years? ${how}`;
  return {
    ...proposal,
    seasons: new Map(seasons),
    sureness: 'unsure',
    questions: [...proposal.questions, question],
  };
}

/**
 * Seasons for codes that come or go between years. That a text stays although others change does not tell that it still
 * means the same, so that a person is asked for each column in which any came, went, or jumped.
 */
export function proposeSeasons(file: DraftedFile): FileProposal {
  const { proposal, kind } = file;
  const years = rowsByYear(file);
  if (years.size < 2) return proposal;
  const { headings } = kind.samples[0]!;
  const profiles = [...years].map(([year, rows]) => [year, profilesOf(headings, rows)] as const);
  const field = seasonFieldOf(file);
  const columns = proposal.columns.map((column) => {
    const isCode = column.use.kind === 'field' && fieldOf(proposal.table, column.use.field)?.type === 'code';
    if (!isCode || column.codes === null) return column;
    const place = headings.indexOf(column.column);
    return withSeasons(column, new Map(profiles.map(([year, all]) => [year, all[place]!])), field);
  });
  const bySeason = columns.some(({ seasons }) => seasons.size > 0);
  return { ...proposal, columns, seasonOf: proposal.seasonOf ?? (bySeason ? field : null) };
}
