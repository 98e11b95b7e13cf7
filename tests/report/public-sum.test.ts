import { toHtml } from 'hast-util-to-html';
import { expect, test } from 'vitest';
import type { FileSum } from '../../src/record/file-sum.js';
import { publicSum } from '../../src/report/public-sum.js';

const file = (kept: number, setAside: number, leftOut: number): FileSum => ({
  file: 'heron-point.csv',
  fingerprint: '',
  crosswalk: 'lakes',
  table: 'inspections',
  read: kept + setAside + leftOut,
  kept,
  setAside,
  leftOut,
  folded: 0,
  problems: { 'not-a-code': setAside },
  notes: {},
});
const said = (...files: FileSum[]): string =>
  publicSum({ files, definitionChanges: [], asOf: null, fingerprint: '' }, 10)
    .map((element) => toHtml(element))
    .join('');

test('all rows are summed over all files, and no file, table or reason is named', () => {
  const page = said(file(90, 12, 0), file(110, 8, 0));
  expect(page).toContain('220 rows read = 200 kept + 20 set aside<');
  expect(page).not.toMatch(/heron-point|inspections|not a code/);
});

test('few rows set aside are withheld, and with them what they would follow from', () => {
  expect(said(file(95, 5, 0))).toContain('100 rows read = withheld kept + withheld set aside<');
  expect(said(file(950, 5, 45))).toContain(
    '1,000 rows read = 950 kept + withheld set aside + withheld left out by rule',
  );
  expect(said(file(950, 3, 4))).toContain(
    '957 rows read = withheld kept + withheld set aside + withheld left out by rule',
  );
  expect(said(file(950, 0, 50))).toContain('1,000 rows read = 950 kept + 0 set aside + 50 left out by rule');
});
