import type { RootContent } from 'mdast';
import type { AskedColumns } from '../../finding/book/watched-book.js';
import type { NotebookDocument } from '../../notebook/document.js';
import { needsOf } from '../../notebook/needs-of.js';
import type { NotebookWorkings } from '../../notebook/workings.js';
import { fileName } from '../file-name.js';
import { joinSeason } from './carried-season.js';
import { isPseudonym, offeredFields, packBook } from './pack-book.js';

/**
 * A computed notebook and the records it asked, as the bytes that a page carries; null where it asked for what tells craft or
 * people apart when no name of its own could be made out, so that nothing of it can be offered.
 */
export function packSeason(workings: NotebookWorkings, asked: AskedColumns): Uint8Array | null {
  const { document, notebook, settings, book } = workings;
  const needs = needsOf(workings);
  const asking = askingForPseudonyms(asked, needs);
  if (asking === null) return null;
  const carried = new Map(
    [...asked].map(([table, columns]) => [table, new Map([...columns].filter(([column]) => !isPseudonym(column)))]),
  );
  const filters = offeredFields(settings.filters ?? []);
  const packed = packBook(book, carried, filters);
  return joinSeason(
    {
      document: withoutPlaces(document),
      fingerprint: notebook.fingerprint,
      filters,
      needs: [...needs],
      whole: {
        selections: [...notebook.selections.values()].filter(({ name }) => asking.has(name)),
        figures: [...notebook.figures.values()].filter(({ name }) => asking.has(name)),
        sheets: [...notebook.sheets.values()].filter(({ name }) => asking.has(name)),
      },
      book: packed.book,
    },
    packed.bytes,
  );
}

/** The names whose values stand on a pseudonym, and all that stand on them; null where nobody knows which asked. */
function askingForPseudonyms(
  asked: AskedColumns,
  needs: ReadonlyMap<string, readonly string[]>,
): ReadonlySet<string> | null {
  const asking = new Set<string>();
  for (const columns of asked.values()) {
    for (const [column, names] of columns) if (isPseudonym(column)) for (const name of names) asking.add(name);
  }
  // What a sheet computes is noted under the name of its column, its rows or its groups.
  const names = [...asking].map((name) => name.replace(/^(rows|groups) of /, '').replace(/\..*$/s, ''));
  if (names.some((name) => !needs.has(name))) return null;
  const standing = new Set(names);
  for (let before = -1; before !== standing.size; ) {
    before = standing.size;
    for (const [name, under] of needs) if (under.some((need) => standing.has(need))) standing.add(name);
  }
  return standing;
}

/** A document without its folder, whose prose has no places but the lines of its headings, by which they are told apart. */
function withoutPlaces(document: NotebookDocument): NotebookDocument {
  return {
    ...document,
    file: fileName(document.file),
    parts: document.parts.map((part) => (part.kind === 'prose' ? { ...part, node: bare(part.node) } : part)),
  };
}

function bare<Node extends RootContent>(node: Node): Node {
  const { position, ...rest } = node;
  const kept = node.type === 'heading' && position !== undefined ? { position } : {};
  const children = 'children' in node ? { children: node.children.map((child) => bare(child as RootContent)) } : {};
  return { ...rest, ...kept, ...children } as Node;
}
