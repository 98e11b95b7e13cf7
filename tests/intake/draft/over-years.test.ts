import { describe, expect, test } from 'vitest';
import { draftCrosswalk } from '../../../src/intake/draft/draft-crosswalk.js';
import { readCrosswalk } from '../../../src/intake/read-crosswalk.js';
import { importSmall, inFolder, valuesOf } from '../small-import.js';

type Files = Readonly<Record<string, string>>;

async function draftOf(files: Files) {
  const drafted = await inFolder(files, (folder) => draftCrosswalk(folder, Object.keys(files), 'drafted'));
  if ('problems' in drafted) throw new Error(JSON.stringify(drafted.problems));
  const column = (name: string) =>
    drafted.files.flatMap(({ columns }) => columns).find((proposal) => proposal.column === name);
  return { ...drafted, column };
}

const rows = (count: number, row: (index: number) => string) =>
  Array.from({ length: count }, (_, index) => row(index)).join('\n');

/** Days of one station in May of a year, with their states in turn. */
const days = (year: number, states: readonly string[], count = 60) =>
  `site,day,state\n${rows(count, (index) => `A,${year}-05-${String((index % 28) + 1).padStart(2, '0')},${states[index % states.length]}`)}\n`;

describe('codes that come or go between years', () => {
  test('are proposed with the seasons in which they are met, and what stayed is asked about too', async () => {
    const { column, files, text } = await draftOf({
      'days-2023.csv': days(2023, ['open', 'shut', 'open', '?']),
      'days-2024.csv': days(2024, ['open', 'shut', 'open', '?']),
      'days-2025.csv': days(2025, ['open', 'closed', 'open', '?']),
    });
    const { seasons, questions } = column('state')!;
    expect(Object.fromEntries(seasons)).toEqual({ shut: '-2024', closed: '2025-' });
    expect(questions.at(-1)).toMatch(/closed is met in 2025 only.*Did any text of this column change its meaning/u);
    expect(files[0]!.seasonOf).toBe('date');
    expect(text).toContain('shut: { "-2024": closed }');
    expect(text).toContain('season_of: date');
    const { problems } = readCrosswalk('c.yaml', text);
    expect(problems.filter(({ code }) => code !== 'crosswalk-open-question')).toEqual([]);
    expect(problems.some(({ seen }) => seen.includes('closed is met in 2025 only'))).toBe(true);
  });

  test('are told by the rows’ own dates where the file’s name tells no year', async () => {
    const both = days(2024, ['open', 'shut']) + days(2025, ['open', 'closed']).replace(/^.*\n/u, '');
    const { column } = await draftOf({ 'days.csv': both });
    expect(Object.fromEntries(column('state')!.seasons)).toEqual({ shut: '-2024', closed: '2025-' });
  });

  test('are no seasons where so few rows could lack them by chance', async () => {
    const { column } = await draftOf({
      'days-2024.csv': days(2024, ['open', 'open', 'open', 'open', 'shut']),
      'days-2025.csv': days(2025, ['open'], 8),
    });
    expect(column('state')!.seasons.size).toBe(0);
  });

  test('are met by slips of the hand in other years without staying for it', async () => {
    const slip = days(2025, ['open', 'closed'], 200).replace('closed', 'shut');
    const { column } = await draftOf({ 'days-2024.csv': days(2024, ['open', 'shut'], 200), 'days-2025.csv': slip });
    expect(Object.fromEntries(column('state')!.seasons)).toEqual({ shut: '-2024', closed: '2025-' });
  });

  test('cannot hold for seasons in rows without a date, so that files of other years are asked to be named apart', async () => {
    const part = (text: string) => `insp,part,state\n${rows(40, (i) => `${i},hull,${i % 2 ? 'clean' : text}`)}\n`;
    const { column } = await draftOf({ 'checks-2024.csv': part('fouled'), 'checks-2025.csv': part('dirty') });
    expect(column('state')!.seasons.size).toBe(0);
    expect(column('state')!.questions.join()).toContain('name the files of those years apart');
  });

  test('are asked about when they jump threefold, as a code does that took over what another meant', async () => {
    const { column } = await draftOf({
      'days-2024.csv': days(
        2024,
        ['open', 'open', 'open', 'open', 'open', 'open', 'open', 'open', 'open', 'shut'],
        200,
      ),
      'days-2025.csv': days(2025, ['open', 'shut'], 200),
    });
    expect(column('state')!.questions.join()).toContain('shut goes from 10.0 % in 2024 to 50.0 % in 2025');
  });
});

const stations = 'id,station name,type,zone\nS1,Alder Landing,launch,UTC\nS2,Heron Point,launch,UTC\n';
const stationDays = (sites: readonly string[]) =>
  `site,day,state\n${rows(20, (i) => `${sites[i % sites.length]},2025-05-${String(i + 1).padStart(2, '0')},open`)}\n`;

describe('stations that other files write otherwise than their list', () => {
  test('are mapped by the names beside the keys, and the others are left to a person', async () => {
    const { column, text } = await draftOf({
      'stations.csv': stations,
      'days.csv': stationDays(['Alder Landing', 'heron point', 'S1', 'Old Ferry']),
    });
    expect(Object.fromEntries(column('site')!.codes!)).toEqual({
      'Alder Landing': 'S1',
      'heron point': 'S2',
      S1: 'S1',
      'Old Ferry': null,
    });
    expect(text).toContain('# Old Ferry: which code?');
  });

  test('need no map where all texts are keys', async () => {
    const { column } = await draftOf({ 'stations.csv': stations, 'days.csv': stationDays(['S1', 'S2']) });
    expect(column('site')!.codes).toBe(null);
  });
});

const waters =
  'id,water name,state,status,since\n' +
  'long-mt,Long Lake,MT,negative,2020-01-31\nlong-id,Long Lake,ID,negative,2020-01-31\nheron,Heron Lake,MT,positive,2020-01-31\n';
const forms = (last: (index: number) => string, heading = 'last water,last state') =>
  `insp,start,${heading}\n${rows(24, (i) => `${i},2025-05-${String(i + 1).padStart(2, '0')} 08:00,${last(i)}`)}\n`;

describe('names of waters that are no keys', () => {
  const written = ['Long Lake,MT', 'Long Lake,ID', 'Hron Lake,MT', 'Heron Lake,ID', 'Hron Lake,MT', 'heron,MT'];
  const files = { 'waters.csv': waters, 'inspections.csv': forms((i) => written[i % written.length]!) };

  test('are matched by the region beside them, and those that match none begin a file of aliases', async () => {
    const { column, unmatched, text } = await draftOf(files);
    expect(column('last water')!.water).toEqual({ regionColumn: 'last state', region: null });
    expect(column('last state')).toBeUndefined();
    // A name of another region is neither matched nor called near.
    expect(unmatched).toEqual([
      { name: 'Hron Lake', region: 'MT', times: 8, nearest: 'Heron Lake', why: 'no water of that name is known' },
      { name: 'Heron Lake', region: 'ID', times: 4, nearest: '', why: 'known in MT, and not in ID' },
    ]);
    expect(text).toContain('aliases: "drafted.aliases.csv"');
    expect(column('last water')!.questions.join()).toContain('2 different names match no water');
  });

  test('wait for their region where no column tells it', async () => {
    const { column, unmatched } = await draftOf({
      ...files,
      'inspections.csv': forms((i) => (i % 2 ? 'Long Lake' : 'Lost Lake'), 'last water'),
    });
    expect(column('last water')!.water).toEqual({ regionColumn: null, region: null });
    expect(column('last water')!.questions.join()).toContain('ID, MT');
    expect(unmatched.map(({ name, nearest }) => [name, nearest])).toEqual([['Lost Lake', '']]);
  });

  test('import once the questions are answered and the aliases filled in', async () => {
    const { text } = await draftOf(files);
    const answered = text
      .split('\n')
      .filter((line) => !/^\s*open:|^\s+- "/u.test(line))
      .join('\n')
      .replace(/(table: inspections)/u, '$1\n    time_zone: UTC')
      .replace(
        /season_of/u,
        'constants: { station: S1, direction: arriving, extent: full, watercraft_type: rowboat, outcome: cleared }\n    season_of',
      );
    const withStations = `${answered}
  - files: stations.csv
    table: stations
    columns: { id: { field: station }, station name: { field: name }, type: { field: setting }, zone: { field: time_zone } }
`;
    const result = await importSmall(withStations, {
      ...files,
      'stations.csv': stations,
      'drafted.aliases.csv': 'name,region,waterbody,times\nHron Lake,MT,heron,8\n',
    });
    expect(result.problems).toEqual([]);
    expect(valuesOf(result, 'inspections', 'last_waterbody').slice(0, 5)).toEqual([
      'long-mt',
      'long-id',
      'heron',
      'heron',
      'heron',
    ]);
    expect(result.unmatched.map(({ name, region, times }) => [name, region, times])).toEqual([['Heron Lake', 'ID', 4]]);
  });

  test('that are short codes are mapped, not matched as names', async () => {
    const { column } = await draftOf({
      'waters.csv': waters,
      'inspections.csv': forms((i) => String(101 + (i % 3)), 'last water'),
    });
    expect(column('last water')!.water).toBe(null);
    expect([...column('last water')!.codes!.values()]).toEqual([null, null, null]);
  });
});
