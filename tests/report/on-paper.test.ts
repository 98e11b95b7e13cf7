import type { ElementContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { onPaper } from '../../src/report/on-paper.js';
import { renderPage } from '../../src/report/page.js';
import { type Paper, paperStyle } from '../../src/report/style/paper.js';
import { sampleContext, sampleNotebook } from './sample-notebook.js';

const account = h('details', { className: ['account'] }, [
  h('summary', ['how']),
  h('p', { id: 'account-one' }, ['so']),
]);
const page: ElementContent[] = [
  h('p', { id: 'here' }, [h('a', { href: '#account-one' }, ['one']), h('a', { href: '#here' }, ['here'])]),
  h('p', [h('a', { href: 'methods.html' }, ['methods']), h('a', { href: 'https://example.org/' }, ['far'])]),
  h('details', { className: ['numbers'] }, [h('summary', ['numbers'])]),
  account,
];
const htmlFor = (paper: Paper): string => toHtml({ type: 'root', children: onPaper(page, paper) });

describe('a page made for paper', () => {
  it('leads neither to a closed account nor to a file beside it', () => {
    const html = htmlFor({ size: 'letter', accounts: false });
    expect([...html.matchAll(/href="([^"]*)"/g)].map(([, address]) => address)).toEqual([
      '#here',
      'https://example.org/',
    ]);
    expect(html).toContain('<span>one</span>');
    expect(html).not.toContain(' open');
  });

  it('has its accounts open where they are asked for, and leads to them', () => {
    const html = htmlFor({ size: 'letter', accounts: true });
    expect(html).toContain('<details class="account" open>');
    expect(html).toContain('<details class="numbers">');
    expect(html).toContain('href="#account-one"');
  });

  it('takes the size that was asked for, and the page for the screen takes whatever the reader’s printer has', () => {
    expect(paperStyle({ size: 'a4', accounts: false })).toContain('@page{size:A4}');
    const paper = { size: 'letter', accounts: false } as const;
    expect(renderPage(sampleNotebook, { ...sampleContext, paper }).html).toContain('@page{size:letter}');
    expect(renderPage(sampleNotebook, sampleContext).html).not.toContain('size:letter');
  });
});
