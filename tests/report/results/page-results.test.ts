import { expect, test } from 'vitest';
import type { Result } from '../../../src/formula/result.js';
import { renderPage } from '../../../src/report/page.js';
import { readPageResults } from '../../../src/report/results/read-page-results.js';
import { number, prose, sampleContext, sampleNotebook, share } from '../sample-notebook.js';

const { html } = renderPage(sampleNotebook, sampleContext);
const results = readPageResults(html)!;

test('a page carries its figures with limits and denominators, unrounded', () => {
  const figure = results.figures.find(({ name }) => name === 'interception')!;
  const { value, interval, numerator, denominator } = figure;
  expect({ value, numerator, denominator }).toEqual({ value: 71 / 21_574, numerator: 71, denominator: 21_574 });
  expect(interval).toMatchObject({ confidence: 0.95, sides: 'two' });
  expect(figure.formula).toBe('rate(intercepted, inspected)');
});

test('a page carries what became of every source file, the inputs, and where it comes from', () => {
  expect(results.files.map(({ file }) => file)).toEqual(sampleContext.sum.files.map(({ file }) => file));
  for (const { read, kept, setAside } of results.files) expect(read).toBe(kept + setAside);
  expect(results.inputs.map(({ name }) => name)).toEqual([...sampleNotebook.inputs.keys()]);
  expect(results.notebook).toBe(sampleNotebook.fingerprint);
  expect(results.program).toEqual(sampleContext.program);
});

test('a page for the public carries no counts of single files', () => {
  expect(readPageResults(renderPage(sampleNotebook, { ...sampleContext, fewest: 10 }).html)!.files).toEqual([]);
});

test('the headline is the first sentence that holds a figure, its interval beside it', () => {
  const notebook = {
    ...sampleNotebook,
    blocks: prose('No number here. Of all, {interception} were. And {wage} more.'),
  };
  expect(readPageResults(renderPage(notebook, sampleContext).html)!.headline).toBe(
    'Of all, 3.29 per 1,000 (95 % interval 2.41 to 4.42) were.',
  );
});

test('what has no value carries its reason and no number', () => {
  const only = (result: Result) => {
    const figure = { name: 'one', formula: 'f', shownAs: '', result, line: 1 };
    const notebook = { ...sampleNotebook, figures: new Map([['one', figure]]), blocks: [] };
    return readPageResults(renderPage(notebook, sampleContext).html)!.figures[0]!;
  };
  expect(only({ kind: 'missing', why: 'withheld' })).not.toHaveProperty('value');
  expect(only(number(null, { why: 'too few' }))).toMatchObject({ value: null, why: 'too few' });
  expect(only(share(0, 10, 0, 0.26)).interval).toMatchObject({ sides: 'upper', high: 0.26 });
});

test('no text of a notebook ends what the page carries', () => {
  const title = 'A </script><script>alert(1)</script> title';
  const page = renderPage({ ...sampleNotebook, title }, sampleContext).html;
  expect(page.match(/<script/g)).toHaveLength(2);
  expect(readPageResults(page)!.title).toBe(title);
});

test('a page of another program, or one that was changed by hand, carries nothing', () => {
  expect(readPageResults('<!doctype html><title>Another page</title>')).toBeNull();
  expect(readPageResults(html.replace('"form":"rampbook page 1"', '"form":"rampbook page 9"'))).toBeNull();
  expect(readPageResults(html.replace('"figures":[', '"figures":["no figure",'))).toBeNull();
  expect(readPageResults(html.replace('"form":', '"form"'))).toBeNull();
});
