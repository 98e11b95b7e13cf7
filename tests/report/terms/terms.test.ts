import type { Element } from 'hast';
import { h } from 'hastscript';
import { expect, test } from 'vitest';
import { methodsPage } from '../../../src/report/methods-page.js';
import { renderPage } from '../../../src/report/page.js';
import { terms } from '../../../src/report/terms/terms.js';
import { termsUsed } from '../../../src/report/terms/terms-used.js';
import { prose, sampleContext, sampleNotebook } from '../sample-notebook.js';

const used = (...children: (string | Element)[]): string[] => termsUsed([h('p', children)]).map(({ name }) => name);

test('each term is defined once, has a source, and stands in alphabetical order', () => {
  const names = terms.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  expect([...names].sort()).toEqual(names);
  for (const { meaning, source } of terms) expect([meaning, source].every((said) => said.endsWith('.'))).toBe(true);
});

test('a term is found as whole words in any number, with a hyphen or without, and not in code', () => {
  expect(used('Fouling sites of Station days')).toEqual(['fouled', 'fouling site', 'station-day']);
  expect(used('An overlooked swashbuckler')).toEqual([]);
  expect(used(h('code', ['count(washes)']), 'nothing')).toEqual([]);
  expect(used('The craft is ', h('b', ['still held']))).toEqual(['censored']);
});

test('a page explains the terms it uses and no others, and leads to all of them', () => {
  const page = (text: string): string => renderPage({ ...sampleNotebook, blocks: prose(text) }, sampleContext).html;
  const html = page('Two turnarounds were censored.');
  const section = /<section aria-labelledby="terms">.*?<\/section>/s.exec(html)![0];
  expect([...section.matchAll(/<dt>([^<]*)/g)].map(([, name]) => name)).toEqual(['Censored', 'Turnaround']);
  const [, anchor] = /href="methods\.html#([^"]*)"/.exec(section)!;
  expect(methodsPage()).toContain(`id="${anchor}"`);
  expect(page('Nothing of the sort.')).not.toContain('aria-labelledby="terms"');
});

test('the page of methods has every term at an address of its own', () => {
  const html = methodsPage();
  for (const { name } of terms) expect(html).toContain(`id="term-${name.replaceAll(' ', '-')}"`);
});
