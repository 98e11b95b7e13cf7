import { toHtml } from 'hast-util-to-html';
import { expect, test } from 'vitest';
import { readingSum } from '../../src/report/reading-sum.js';

const file = {
  file: 'a.csv',
  fingerprint: '',
  crosswalk: 'lakes',
  table: 'checks',
  read: 1,
  kept: 1,
  setAside: 0,
  leftOut: 0,
  folded: 0,
  problems: {},
  notes: {},
} as const;
const sum = { files: [file], definitionChanges: [], asOf: null, fingerprint: '' };
const html = (changes: Parameters<typeof readingSum>[0]['ruleChanges']) =>
  readingSum(changes === undefined ? sum : { ...sum, ruleChanges: changes })
    .map((element) => toHtml(element))
    .join('');

test('a rule set otherwise stands beside the sum of rows, with its reason and in what was usual', () => {
  const change = {
    crosswalk: 'lakes',
    code: 'over-long',
    usual: 'sets aside',
    set: 'notes',
    limits: 'an inspection at most 16 hours',
    because: 'border <stations> strip craft',
  };
  const page = html([change]);
  expect(page).toContain('over long');
  expect(page).toContain('notes: an inspection at most 16 hours');
  expect(page).toContain('border &#x3C;stations> strip craft');
});

test('nothing is said where no rule was set, or the store is from before', () => {
  expect(html([])).not.toContain('rules-set-otherwise');
  expect(html(undefined)).toBe(html([]));
});
