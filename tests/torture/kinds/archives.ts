import { readFileSync } from 'node:fs';
import type { Random } from '../../../src/statistic/random.js';
import { archiveOf, workbookOf } from '../../intake/small-archive.js';
import { importSmall, notesCrosswalk } from '../../intake/small-import.js';
import { spoilBytes } from '../spoil.js';
import { hold, type Kind, oneOf } from '../trial.js';

const within = (path: string, table = notesCrosswalk) =>
  table.replace('notes.csv', path).replace('    columns:', '    dialect: { unpacked_mib: 2 }\n    columns:');
const header = 'no,note,dollars\n';
const rowsOf = (count: number) => Array.from({ length: count }, (_, row) => `${row},n,${row}\n`).join('');
const zeros = Buffer.concat([Buffer.from(header), Buffer.alloc(20 << 20, 0x20)]);
const packedZeros = archiveOf([['a.csv', zeros]]);
const lyingZeros = archiveOf([['a.csv', zeros, { claimedSize: 100 }]]);
const sharedBook = readFileSync(new URL('../../intake/workbooks/dates-1900.xlsx', import.meta.url));
const cell = (name: string, value: string) => `<c r="${name}"><v>${value}</v></c>`;
const head = `<row r="1"><c r="A1" t="inlineStr"><is><t>no</t></is></c><c r="B1" t="inlineStr"><is><t>note</t></is></c><c r="C1" t="inlineStr"><is><t>dollars</t></is></c></row>`;

/** What is made to unpack without end, to nest without end, or to point at places that are none. */
const bombs: readonly ((random: Random) => readonly [path: string, name: string, bytes: Uint8Array])[] = [
  () => ['all.zip', 'all.zip', packedZeros],
  () => ['all.zip', 'all.zip', lyingZeros],
  () => ['all.zip', 'all.zip', archiveOf([['inner.zip', packedZeros]])],
  () => [
    'all.zip/*.csv',
    'all.zip',
    archiveOf(Array.from({ length: 1000 }, (_, at) => [`f${at}.csv`, header] as const)),
  ],
  () => [
    'all.zip/*.csv',
    'all.zip',
    archiveOf([
      ['a.csv', header + rowsOf(3)],
      ['a.csv', header + rowsOf(2)],
    ]),
  ],
  () => ['all.zip', 'all.zip', archiveOf([['../../a.csv', header + rowsOf(3)]])],
  () => ['all.zip', 'all.zip', archiveOf([['/etc/a.csv', header + rowsOf(3)]])],
  () => ['all.zip', 'all.zip', archiveOf([['C:\\a.csv', header + rowsOf(3)]])],
  () => ['all.zip', 'all.zip', Buffer.concat([packedZeros, packedZeros])],
  () => ['book.xlsx', 'book.xlsx', workbookOf(`${head}<row r="4294967297">${cell('A4294967297', '1')}</row>`)],
  () => ['book.xlsx', 'book.xlsx', workbookOf(`${head}<row r="2">${cell('ZZZZZZ2', '1')}</row>`)],
  () => [
    'book.xlsx',
    'book.xlsx',
    workbookOf(`${head}<row r="1048576">${cell('A1048576', '1')}${cell('C1048576', '2')}</row>`),
  ],
  () => ['book.xlsx', 'book.xlsx', workbookOf(`${head}${'<a>'.repeat(50_000)}`)],
  () => [
    'book.xlsx',
    'book.xlsx',
    workbookOf(`<!DOCTYPE a [<!ENTITY x "xxxx">]>${head}<row r="2"><c r="A2"><v>&x;</v></c></row>`),
  ],
  () => ['book.xlsx', 'book.xlsx', workbookOf(`${head}<row r="2"><c r="A2" t="s"><v>9999999</v></c></row>`)],
  () => ['book.xlsx', 'book.xlsx', workbookOf(`${head}<row r="2"><c r="A2"><v>${'9'.repeat(1 << 20)}</v></c></row>`)],
  () => [
    'book.xlsx',
    'book.xlsx',
    workbookOf(head, { 'xl/sharedStrings.xml': `<sst>${'<si><t>x</t></si>'.repeat(200_000)}</sst>` }),
  ],
];

/** ZIP archives and workbooks: bombs, and sound ones with bytes spoilt. */
export const archivesKind: Kind = {
  name: 'archives',
  counted: 'rows',
  patience: 180,
  pace: 20,
  run: async (random) => {
    const [path, name, bytes] =
      random.below(12) === 0
        ? oneOf(random, bombs)(random)
        : oneOf(random, [
            () =>
              [
                'all.zip/a.csv',
                'all.zip',
                spoilBytes(
                  archiveOf([
                    ['a.csv', header + rowsOf(40)],
                    ['b.csv', header],
                  ]),
                  random,
                ),
              ] as const,
            () =>
              [
                'book.xlsx',
                'book.xlsx',
                spoilBytes(workbookOf(`${head}<row r="2">${cell('A2', '1')}</row>`), random),
              ] as const,
            () => ['book.xlsx', 'book.xlsx', spoilBytes(sharedBook, random)] as const,
          ])();
    const before = process.memoryUsage().rss;
    const { sum, problems } = await importSmall(within(path), { [name]: bytes });
    const grown = (process.memoryUsage().rss - before) / 2 ** 20;
    hold(grown < 300, () => `${path}: took ${Math.round(grown)} MiB where 2 MiB may be unpacked`);
    let accounted = 0;
    for (const { file, read, kept, setAside, leftOut = 0 } of sum.files) {
      hold(read === kept + setAside + leftOut, () => `${file}: ${read} is not ${kept} + ${setAside} + ${leftOut}`);
      accounted += read;
    }
    hold(problems.length + sum.files.length > 0, () => 'neither read nor refused');
    for (const { code, remedy } of problems)
      hold(code !== '' && remedy !== '', () => 'a problem without code or remedy');
    return { ended: problems.length > 0 ? 'refused' : 'taken in', accounted };
  },
};
