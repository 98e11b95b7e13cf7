import type { Paragraph, Root, RootContent, Table } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { frontmatterFromMarkdown } from 'mdast-util-frontmatter';
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table';
import { toString as plainText } from 'mdast-util-to-string';
import { frontmatter } from 'micromark-extension-frontmatter';
import { gfmTable } from 'micromark-extension-gfm-table';
import type { Problem } from '../problem/problem.js';
import { readChart } from './chart-address.js';
import type { Cell, NotebookDocument, Part, ProseValue, SheetDeclaration } from './document.js';
import { readLiveTable, tableCells } from './live-table.js';
import { readSettings } from './settings.js';
import { isSheetSentence, readSheetSentence } from './sheet-sentence.js';
import type { WrittenPart } from './written.js';

/** A notebook read, with every mistake of form in it; what cannot be read is left out of the document. */
export interface ReadNotebook {
  readonly document: NotebookDocument;
  readonly problems: readonly Problem[];
  /** Where each part of the document stands in the text, in the same order. */
  readonly written: readonly WrittenPart[];
  /** The lines of the settings at its head, hyphens included; null without any. */
  readonly head: { readonly first: number; readonly last: number } | null;
}

/** The notebook that a CommonMark text with pipe tables declares; `file` is the name that problems give. */
export function readDocument(file: string, text: string): ReadNotebook {
  const root: Root = fromMarkdown(text, {
    extensions: [gfmTable(), frontmatter('yaml')],
    mdastExtensions: [gfmTableFromMarkdown(), frontmatterFromMarkdown('yaml')],
  });
  const problems: Problem[] = [];
  const parts: Part[] = [];
  const written: WrittenPart[] = [];
  const add = (part: Part, from: RootContent, to: RootContent = from): void => {
    parts.push(part);
    const table = to.type === 'table' ? to : null;
    written.push({
      first: from.position!.start.line,
      last: to.position!.end.line,
      table: table === null ? null : tableCells(text, table),
    });
  };
  const proseValues: ProseValue[] = [];
  const chartNames = new Set<string>();
  const head = root.children[0];
  const settings = readSettings(file, head?.type === 'yaml' ? head.value : '', problems);
  const nodes = root.children.filter((node) => node.type !== 'yaml' && node.type !== 'definition');
  for (let at = 0; at < nodes.length; at++) {
    const node = nodes[at]!;
    if (node.type === 'table') {
      const live = readLiveTable(file, text, node, problems);
      if (live?.kind === 'columns') problems.push(columnsWithoutSheet(file, node));
      add(live === null || live.kind === 'columns' ? { kind: 'prose', node } : live, node);
      continue;
    }
    if (node.type === 'paragraph') {
      if (isSheetSentence(sourceOf(text, node).text)) {
        const next = nodes[at + 1];
        const sheet = readSheet(file, text, node, next, problems);
        const last = sheet.usedTable ? nodes[at + 1] : node;
        add(sheet.sheet === null ? { kind: 'prose', node } : { kind: 'sheet', sheet: sheet.sheet }, node, last);
        if (sheet.usedTable) at++;
        continue;
      }
      const chart = readChart(file, node, problems);
      if (chart !== null) {
        add({ kind: 'chart', chart: { ...chart, name: freeName(chart.name, chartNames) } }, node);
        continue;
      }
    }
    proseValues.push(...valuesIn(text, node));
    add({ kind: 'prose', node }, node);
  }
  return {
    document: {
      file,
      title: titleOf(root, file),
      settings,
      parts,
      proseValues,
    },
    problems,
    written,
    head: head?.type === 'yaml' ? { first: head.position!.start.line, last: head.position!.end.line } : null,
  };
}

/** A name that no chart above has, since addresses on the page are made of it: itself, or with the next number behind it. */
function freeName(name: string, taken: Set<string>): string {
  let free = name;
  for (let number = 2; taken.has(free); number++) free = `${name}-${number}`;
  taken.add(free);
  return free;
}

function readSheet(
  file: string,
  text: string,
  paragraph: Paragraph,
  next: RootContent | undefined,
  problems: Problem[],
): { sheet: SheetDeclaration | null; usedTable: boolean } {
  const sentence = readSheetSentence(file, sourceOf(text, paragraph));
  const columns =
    next?.type === 'table' && firstHead(next) === 'column' ? readLiveTable(file, text, next, problems) : null;
  const usedTable = columns?.kind === 'columns';
  if ('problem' in sentence) {
    problems.push(sentence.problem);
    return { sheet: null, usedTable };
  }
  return {
    sheet: { ...sentence, columns: usedTable ? columns.rows : [] },
    usedTable,
  };
}

function columnsWithoutSheet(file: string, table: Table): Problem {
  const start = table.position!.start;
  return {
    code: 'columns-without-sheet',
    severity: 'sets aside',
    place: { file, line: start.line, column: start.column, field: null },
    seen: 'a table of columns',
    wanted: 'a sentence "Sheet NAME: each FIELD of ROWS." right above it',
    remedy: 'Name the sheet and its rows in a paragraph of its own directly above this table.',
  };
}

function firstHead(table: Table): string {
  return plainText(table.children[0]?.children[0] ?? '').trim();
}

/** A node's text as it stands in the document. */
function sourceOf(text: string, node: RootContent): Cell {
  const { start, end } = node.position!;
  return {
    text: text.slice(start.offset, end.offset),
    line: start.line,
    column: start.column,
  };
}

/** Every `{name}` in a node's prose; code spans are left alone. */
function valuesIn(text: string, node: RootContent): ProseValue[] {
  if (node.type === 'text') {
    const found: ProseValue[] = [];
    const source = sourceOf(text, node);
    source.text.split('\n').forEach((line, row) => {
      for (const match of line.matchAll(/\{([^{}]*)\}/g)) {
        const column = (row === 0 ? source.column : 1) + match.index + 1;
        found.push({
          name: { text: match[1]!.trim(), line: source.line + row, column },
        });
      }
    });
    return found;
  }
  return 'children' in node ? node.children.flatMap((child) => valuesIn(text, child)) : [];
}

function titleOf(root: Root, file: string): string {
  const heading = root.children.find((node) => node.type === 'heading' && node.depth === 1);
  return heading === undefined ? file.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '') : plainText(heading);
}
