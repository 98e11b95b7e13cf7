import fc from 'fast-check';
import { toHtml } from 'hast-util-to-html';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { describe, expect, it } from 'vitest';
import { proseElements, type ValueInProse } from '../../src/report/prose.js';

const standIn: ValueInProse = (name) =>
  name === 'inspected'
    ? { shown: [{ type: 'text', value: '21,574' }] }
    : { problem: { code: 'unknown-name', severity: 'sets aside', seen: name, wanted: 'a name', remedy: 'Name one.' } };

function read(markdown: string) {
  const parts = fromMarkdown(markdown).children.map((node) => proseElements('a.md', node, standIn));
  return {
    html: toHtml({ type: 'root', children: parts.flatMap((part) => [...part.elements]) }),
    problems: parts.flatMap((part) => part.problems),
  };
}

describe('prose', () => {
  it('holds values where their names stood, and never within code', () => {
    expect(read('**{inspected}** craft, `{inspected}`').html).toBe(
      '<p><strong>21,574</strong> craft, <code>{inspected}</code></p>',
    );
  });

  it('keeps a name that is not known to be seen, and tells its place', () => {
    const { html, problems } = read('One\ntwo {inspectd} three');
    expect(html).toContain('<mark>{inspectd}</mark>');
    expect(problems).toEqual([
      expect.objectContaining({
        code: 'unknown-name',
        seen: 'inspectd',
        place: { file: 'a.md', line: 2, column: 6, field: null },
      }),
    ]);
  });

  it.each(['javascript:alert(1)', 'JaVaScRiPt:alert(1)', 'data:text/html,x', 'vbscript:x', 'file:///etc/passwd'])(
    'does not lead to %s',
    (address) => {
      expect(read(`[here](<${address}>)`).html).toBe('<p><a>here</a></p>');
    },
  );

  it.each(['https://example.org/', 'mailto:crew@example.org', 'budget.html', '#cautions'])(
    'does lead to %s',
    (address) => {
      expect(read(`[here](<${address}>)`).html).toBe(`<p><a href="${address}">here</a></p>`);
    },
  );

  it('leaves out markup and pictures, and says so', () => {
    const { html, problems } = read(
      'a <img src=x onerror=alert(1)> ![boat](https://example.org/b.png)\n\n<script>x</script>',
    );
    expect(html).toBe('<p>a  [picture left out: boat]</p>');
    expect(problems.map(({ code, place }) => [code, place.line])).toEqual([
      ['markup-left-out', 1],
      ['picture-left-out', 1],
      ['markup-left-out', 3],
    ]);
  });

  it('holds nothing that runs or fetches, whatever is written', () => {
    const pieces = fc.constantFrom(
      '<',
      '>',
      '"',
      "'",
      '&',
      '`',
      '[',
      '](',
      ')',
      '![',
      '{',
      '}',
      'javascript:',
      'onload=',
      '\n',
      'a',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 30 }), (words) => {
        const { html } = read(words.join(''));
        expect(html).not.toMatch(/<(script|img|iframe|style|svg|object)|<[^>]*\son\w+=|href="?javascript/i);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});
