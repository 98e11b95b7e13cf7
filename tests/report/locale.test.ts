import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { expect, test } from 'vitest';
import { exampleBook } from '../../src/finding/example/example-book.js';
import { computeNotebook } from '../../src/notebook/compute-notebook.js';
import { readDocument } from '../../src/notebook/read-document.js';
import { readSettings } from '../../src/notebook/settings.js';
import type { Problem } from '../../src/problem/problem.js';
import { currentLocale } from '../../src/record/written-numbers.js';
import { chartFigure } from '../../src/report/chart-figure.js';
import { deskParts } from '../../src/report/desk/desk-parts.js';
import { renderPage } from '../../src/report/page.js';
import { sampleContext, sampleNotebook } from './sample-notebook.js';

const noBreak = '\u00a0';
const pageIn = (locale: 'en-US' | 'en-CA' | 'fr-CA') => renderPage({ ...sampleNotebook, locale }, sampleContext).html;

const [fr, us] = [pageIn('fr-CA'), pageIn('en-US')];

test('a page writes every number of its figures, sums and tables by its locale', () => {
  expect(fr).toContain(`3,29 per 1${noBreak}000</span> (95 % interval 2,41 to 4,42)`);
  expect(fr).toContain(`25${noBreak}217 rows read = 25${noBreak}151 kept + 66 set aside`);
  const withoutCurves = fr.replace(/ d="[^"]*"/g, '');
  expect(withoutCurves.includes('3.29')).toBe(false);
});

test('what programs read is the same in every locale', () => {
  const downloads = (html: string): readonly string[] => html.match(/href="data:[^"]*"/g) ?? [];
  const sorted = (html: string): readonly string[] => html.match(/data-order="[^"]*"/g) ?? [];
  expect(downloads(fr).filter((link) => link.includes('csv'))).toEqual(
    downloads(us).filter((link) => link.includes('csv')),
  );
  expect(sorted(fr)).toEqual(sorted(us));
});

test('a page of no locale is one of en-US, and is so after a page of another', () => {
  expect(renderPage(sampleNotebook, sampleContext).html).toBe(us);
});

test('a locale that is not declared is a problem', () => {
  const problems: Problem[] = [];
  expect(readSettings('one.md', 'locale: fr-CA', problems).locale).toBe('fr-CA');
  expect(readSettings('one.md', 'locale: toString', problems).locale).toBeUndefined();
  expect(problems.map(({ code, wanted }) => [code, wanted])).toEqual([
    ['bad-setting', 'en-US, en-CA, fr-CA for "locale"'],
  ]);
});

test('the desk writes sheets, sentences and drawings by the locale of the notebook, as its page does', () => {
  const text = [
    '---',
    'locale: fr-CA',
    '---',
    '',
    'There are {half}.',
    '',
    '| figure | formula | shown as |',
    '|---|---|---|',
    '| half | count(inspections) / 2 | one decimal |',
    '',
    'Sheet s: each setting of inspections.',
    '',
    '| column | formula | shown as |',
    '|---|---|---|',
    '| n | count() / 7 | one decimal |',
    '',
    '![Some](dots?sheet=s&value=n)',
  ].join('\n');
  const read = readDocument('small.md', text);
  const { notebook } = computeNotebook(read, exampleBook(), 'print');
  const locales: string[] = [];
  const parts = deskParts(text, read, notebook, (request, drawn) => {
    locales.push(currentLocale());
    return chartFigure(request, drawn);
  });
  const shown = toHtml(
    h(
      'div',
      parts.flatMap(({ elements }) => elements),
    ),
  );
  expect(shown).toMatch(/There are[^.]*>\d+,\d</u);
  expect(shown).toMatch(/<td[^>]*>[^<]*<?[^>]*>?\d+,\d/u);
  expect(shown.replace(/<svg.*?<\/svg>/gsu, '')).not.toMatch(/>\d+\.\d</u);
  expect(locales).toEqual(['fr-CA']);
});
