import { fieldOf } from '../../record/field.js';
import { profilesOf } from './column-profile.js';
import { type DraftedFile, type KnownList, listOf } from './known-list.js';

/** More names than this are not all written into a question. */
const mostNames = 20;

/** The lists without which rows that name a station or a water are set aside, with the headings that a person can write. */
const lists = [
  {
    table: 'stations',
    file: 'stations.csv',
    headings: 'station, name, setting (launch, roadside or border), time_zone',
  },
  { table: 'waterbodies', file: 'waters.csv', headings: 'waterbody, name, status, status_from' },
] as const;

/** What drafted files name of a table, the most frequent first. */
function namesOf(files: readonly DraftedFile[], table: string): readonly string[] {
  const times = new Map<string, number>();
  for (const { kind, proposal } of files) {
    const { headings } = kind.samples[0]!;
    const rows = kind.samples.flatMap((sample) => sample.rows);
    const naming = proposal.columns.filter(({ use }) => {
      const field = use.kind === 'field' ? fieldOf(proposal.table, use.field) : null;
      return field?.type === 'reference' && field.to === table;
    });
    const wanted = new Set(naming.map(({ column }) => column));
    for (const { heading, values } of profilesOf(headings, rows)) {
      if (!wanted.has(heading)) continue;
      for (const [text, count] of values) times.set(text, (times.get(text) ?? 0) + count);
    }
  }
  return [...times].sort(([a, many], [b, others]) => others - many || (a < b ? -1 : 1)).map(([text]) => text);
}

/** What is asked where drafted files name stations or waters, and none of them lists those. */
export function questionsOnLists(files: readonly DraftedFile[], known: readonly KnownList[]): readonly string[] {
  return lists.flatMap(({ table, file, headings }) => {
    const names = listOf(known, table) === null ? namesOf(files, table) : [];
    if (names.length === 0) return [];
    const more = names.length > mostNames ? `, and ${names.length - mostNames} more` : '';
    return [
      `No file drafted here lists the ${table}, and rows that name what nobody lists are set aside. Write ${file} among the exports, with the headings ${headings} and a row for each of ${names.slice(0, mostNames).join(', ')}${more}; then draft again. Or import this crosswalk together with the one that lists them.`,
    ];
  });
}
