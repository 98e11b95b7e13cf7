import { type DirtBook, type Spoiling, spoiltCell } from './dirt.js';
import { ExportFile, type WrittenFile } from './export-file.js';
import type { Spending } from './spending.js';

const header = ['entry', 'fy', 'category', 'place', 'fund', 'dollars', 'note', 'booked_by'];
const categories: Readonly<Record<string, string>> = {
  personnel: 'PERS',
  travel: 'TRAV',
  equipment: 'EQUIP',
  supplies: 'SUPP',
  contracts: 'CONTR',
  training: 'TRAIN',
  indirect: 'INDIR',
};
const clerks = ['Ivo Ledgerman', 'Una Tallyfield'];

const spoilings: readonly Spoiling<Spending>[] = [
  spoiltCell('unknown-code', 'category', 'SUPPLY', ({ category }) => category === 'supplies'),
  spoiltCell('not-a-number', 'dollars', (cell) => `$${cell}`),
  spoiltCell('unknown-reference', 'place', 'alder-ladning'),
];

/** The office's ledger of all fiscal years. */
export function writeSpending(folder: string, ledger: readonly Spending[], dirt: DirtBook): WrittenFile {
  const dialect = { delimiter: ',', newline: '\n', byteOrderMark: false } as const;
  const file = new ExportFile(folder, 'office/spending.csv', header, dialect);
  ledger.forEach((spent, index) => {
    const { entry, year, category, station, fund, amount, note } = spent;
    const clerk = clerks[index % clerks.length]!;
    const cells = [entry, String(year), categories[category]!, station ?? '', fund, amount.toFixed(2), note, clerk];
    spent.kept = dirt.write(file, cells, spent, 0.005, spoilings);
    if (spent.kept && index === 200) dirt.writeFaulty(file, cells, 'entry', 'duplicate-key');
  });
  return file.close();
}
