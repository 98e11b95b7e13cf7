import { expect, test } from 'vitest';
import { asideOf, importSmall, valuesOf } from './small-import.js';

const crosswalk = `
crosswalk: ledger
files:
  - files: ledger.csv
    table: spending
    thousands: space
    combine: { amount: { columns: [Debit, Credit], minus: [Credit], missing: ["", "0.00"], unit: written or dollars } }
    columns: { no: { field: entry } }
    constants: { fiscal_year: 2025, category: supplies }
`;
const read = (rows: readonly string[], text = crosswalk) =>
  importSmall(text, { 'ledger.csv': `no,Debit,Credit\n${rows.join('\n')}\n` });

test('of debits and credits one is filled in, and credits are taken away', async () => {
  const result = await read(['1,1 200.50,', '2,,$30', '3,0.00,5', '4,7,0.00']);
  expect(result.problems).toEqual([]);
  expect(valuesOf(result, 'spending', 'amount')).toEqual([1200.5, -30, -5, 7]);
});

test('both, or neither, set the row aside: no two numbers become one', async () => {
  const result = await read(['1,1,200', '2,,', '3,,x']);
  expect(asideOf(result)).toEqual(['2 Debit not-a-number', '3 Debit missing-value', '4 Debit not-a-number']);
  expect(result.records.spending.rowCount).toBe(0);
});

test('which of the columns is taken away must be said, and only of a number', async () => {
  const codesOf = async (text: string) => (await read([], text)).problems.map(({ code }) => code);
  expect(await codesOf(crosswalk.replace('minus: [Credit], ', ''))).toEqual(['crosswalk-missing-setting']);
  expect(await codesOf(crosswalk.replace('minus: [Credit]', 'minus: [Kredit]'))).toEqual(['crosswalk-unknown-column']);
  const note = crosswalk.replace('amount: {', 'note: {').replace(', unit: written or dollars', '');
  expect(await codesOf(note)).toContain('crosswalk-useless-setting');
});
