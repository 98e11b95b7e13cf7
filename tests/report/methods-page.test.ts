import { expect, test } from 'vitest';
import { findings } from '../../src/finding/findings.js';
import { methodsPage } from '../../src/report/methods-page.js';
import { statisticAccounts } from '../../src/statistic/account/statistic-accounts.js';

const html = methodsPage();
const text = html
  .replace(/<style>.*?<\/style>|<script>.*?<\/script>/gs, '')
  .replace(/<[^>]*>/g, ' ')
  .replace(/&#x([0-9A-F]+);/g, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)))
  .replace(/\s+/g, ' ');
const plain = (said: string): string => said.replace(/\s+/g, ' ');

test('every finding stands there with its whole account and a worked example that has rows', () => {
  for (const { name, account, options = [] } of findings) {
    expect(text.toLowerCase()).toContain(name.toLowerCase());
    const { definition, formula, numerator, denominator, leftOut, method, source } = account;
    // Missing values are there once for every table and told once.
    const said = [definition, formula, numerator, denominator, leftOut, method, source];
    for (const one of said) expect(text).toContain(plain(one));
    for (const { meaning } of options) expect(text).toContain(meaning);
  }
  const examples = [...html.matchAll(/<table id="example-[^>]*>.*?<\/table>/gs)];
  expect(examples).toHaveLength(new Set(findings.map(({ name }) => name)).size);
  expect(examples.filter(([table]) => !/<tbody><tr>/.test(table)).map(([table]) => table.slice(0, 60))).toEqual([]);
});

test('every statistic stands there with its formula, source and the numbers of its published example', () => {
  for (const { accounts } of statisticAccounts) {
    for (const { name, formula, source } of accounts) {
      for (const said of [name, formula, source]) expect(text).toContain(plain(said));
    }
  }
  // Newcombe 1998, 81 of 263 by Wilson's score; Freireich et al. 1963, median 23 with limits 13 and none; Seber's turtles
  // as in tests/reference/statistics.json, cr-turtles.
  expect(text).toContain('low 0.255289; high 0.36621');
  expect(text).toContain('median 23; low 13; high not reached');
  expect(text).toContain('chance 0.333333; all 28.3333; low 22.3853; high 49.114');
});

test('nothing on it is not a number, and it is the same each time', () => {
  expect(text).not.toMatch(/\bNaN\b|\bundefined\b|\bInfinity\b|\[object/);
  expect(methodsPage()).toBe(html);
  const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id!);
  expect(new Set(ids).size).toBe(ids.length);
});

test('it carries the cautions that stand wherever washes are told', () => {
  expect(text).toContain('Scalding: water hot enough to kill mussels burns skin within seconds.');
});
