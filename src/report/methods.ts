import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Result } from '../formula/result.js';
import type { EvaluatedNotebook } from '../notebook/evaluated.js';
import { anchorOfText } from './anchor.js';
import { words } from './words.js';

/** The methods of the page's intervals, numbered from 1 in the order in which a reader meets them. */
export type Methods = ReadonlyMap<string, number>;

/** Every method that an interval on the page names. */
export function methodsOf(notebook: EvaluatedNotebook): Methods {
  const methods = new Map<string, number>();
  const note = (result: Result): void => {
    if (result.kind !== 'number' || result.interval === null || methods.has(result.interval.method)) return;
    methods.set(result.interval.method, methods.size + 1);
  };
  for (const block of notebook.blocks) {
    if (block.kind === 'figures') {
      for (const name of block.names) {
        const figure = notebook.figures.get(name);
        if (figure !== undefined) note(figure.result);
      }
    } else if (block.kind === 'sheet') {
      for (const row of notebook.sheets.get(block.name)?.rows ?? []) row.cells.forEach(note);
    }
  }
  return methods;
}

/** The mark that leads from an interval to its method: a number in brackets; null where there is no interval. */
export function methodMark(result: Result, methods: Methods): Element | null {
  if (result.kind !== 'number' || result.interval === null) return null;
  const { method } = result.interval;
  return h('a', { href: `#${anchorOfText('method', method)}`, className: ['mark'] }, [
    `[${methods.get(method) ?? '?'}]`,
  ]);
}

/** The methods as a numbered list. */
export function methodList(methods: Methods): Element {
  if (methods.size === 0) return h('p', [words.noMethods]);
  return h(
    'ol',
    { className: ['methods'] },
    [...methods.keys()].map((method) => h('li', { id: anchorOfText('method', method) }, [method])),
  );
}
