import type { Problem } from '../problem/problem.js';
import { inDocument } from '../problem/problem.js';
import type { Cell, SheetDeclaration, SheetOrder, ToldOption } from './document.js';

type Sentence = Omit<SheetDeclaration, 'columns'>;

const wantedForm =
  '"Sheet NAME: each FIELD of ROWS." or "Sheet NAME: FINDING of ROWS, by FIELD, with OPTION VALUE.", with ", highest COLUMN first" or ", lowest COLUMN first, at most 10" before the full stop if wished, and a title in double quotes behind NAME if wished';

/** Whether a paragraph declares a sheet. */
export function isSheetSentence(text: string): boolean {
  return /^Sheet\s+\S+(?:\s+"[^"]*")?\s*:/.test(text);
}

/** The sentence without the title that readers see: what the sheet holds, however it is called. */
export function untitled(sentence: string): string {
  return sentence.replace(/^(Sheet\s+\S+)\s+"[^"]*"/, '$1');
}

/** The sentence that declares a sheet, taken apart; or the problem with it. */
export function readSheetSentence(file: string, sentence: Cell): Sentence | { readonly problem: Problem } {
  const text = sentence.text;
  const part = (start: number, end: number): Cell => partOf(sentence, start, end);
  const bad = (at: Cell, seen: string): { problem: Problem } => ({
    problem: {
      code: 'sheet-sentence',
      severity: 'sets aside',
      place: inDocument(file, at.line, at.column),
      seen,
      wanted: wantedForm,
      remedy:
        'Write the sentence in one of these forms, in a paragraph of its own, right above the table of its columns.',
    },
  });
  const head = /^Sheet\s+([a-z][a-z0-9_]*)(?:\s+"([^"]+)")?\s*:\s*/.exec(text);
  if (head === null) return bad(sentence, firstWords(text));
  const stop = /\.\s*$/.exec(text);
  if (stop === null) return bad(sentence, firstWords(text));
  const nameStart = text.indexOf(head[1]!, 5);
  const name = part(nameStart, nameStart + head[1]!.length);
  const title = (head[2] ?? '').replace(/\s+/g, ' ').trim();
  const bodyStart = head[0].length;
  const { order, end } = readOrder(part, text, stop.index);
  const each = /^each\s+/.exec(text.slice(bodyStart, end));
  const of = findOf(text, bodyStart, end);
  if (of === null) return bad(part(bodyStart, end), firstWords(text.slice(bodyStart)));
  if (each !== null) {
    const comma = strayComma(text, of.end, end);
    if (comma !== null) return bad(part(comma, end), text.slice(comma, end).trim());
    const fields = splitFields(part, text, bodyStart + each[0].length, of.start);
    if (fields.some((field) => !/^[a-z][a-z0-9_]*$/.test(field.text)))
      return bad(part(bodyStart, of.start), text.slice(bodyStart, of.start).trim());
    return {
      name,
      title,
      sentence: text,
      maker: { kind: 'each', fields, rows: trimmed(part, text, of.end, end) },
      order,
    };
  }
  const told = readOptions(part, text, end);
  const by = /,\s*by\s+([a-z0-9_]+(?:(?:\s*,\s*|\s+and\s+)[a-z0-9_]+)*)\s*$/.exec(text.slice(0, told.end));
  const rowsEnd = by === null ? told.end : by.index;
  const comma = strayComma(text, of.end, rowsEnd);
  if (comma !== null) return bad(part(comma, end), text.slice(comma, end).trim());
  const fields = by === null ? [] : splitFields(part, text, by.index + by[0].indexOf(by[1]!), told.end);
  const finding = trimmed(part, text, bodyStart, of.start);
  return {
    name,
    title,
    sentence: text,
    maker: {
      kind: 'finding',
      finding,
      rows: trimmed(part, text, of.end, rowsEnd),
      by: fields,
      options: told.options,
    },
    order,
  };
}

/** Where rows are followed by a comma that is neither in brackets nor in a text, and by no form that is known; null for none. */
function strayComma(text: string, start: number, end: number): number | null {
  let depth = 0;
  let inText = false;
  for (let at = start; at < end; at++) {
    const letter = text[at];
    if (letter === '"') inText = !inText;
    else if (inText) continue;
    else if (letter === '(') depth++;
    else if (letter === ')') depth--;
    else if (letter === ',' && depth === 0) return at;
  }
  return null;
}

type Part = (start: number, end: number) => Cell;

/** The order at the sentence's end, and where the rest ends. */
function readOrder(part: Part, text: string, end: number): { order: SheetOrder | null; end: number } {
  const found = /,\s*(highest|lowest)\s+([a-z][a-z0-9_]*)\s+first(?:,\s*at most\s+(\d+))?\s*$/.exec(text.slice(0, end));
  if (found === null) return { order: null, end };
  const columnStart = found.index + found[0].indexOf(found[2]!, found[0].indexOf(found[1]!) + found[1]!.length);
  return {
    order: {
      column: part(columnStart, columnStart + found[2]!.length),
      from: found[1] === 'highest' ? 'highest' : 'lowest',
      most: found[3] === undefined ? null : Number(found[3]),
    },
    end: found.index,
  };
}

/** A number ends with a digit, so that the comma behind it is one between two options. */
const toldOption = '([a-z][a-z_]*)\\s+("[^"]*"|[a-z][a-z0-9_]*|-?[0-9](?:[0-9,.]*[0-9])?)';
const toldBetween = '(?:\\s*,\\s*|\\s+and\\s+)';

/** What the finding is told behind `with`, and where the rest ends. */
function readOptions(part: Part, text: string, end: number): { options: readonly ToldOption[]; end: number } {
  const found = new RegExp(`,\\s*with\\s+(${toldOption}(?:${toldBetween}${toldOption})*)\\s*$`).exec(
    text.slice(0, end),
  );
  if (found === null) return { options: [], end };
  const start = found.index + found[0].trimEnd().length - found[1]!.length;
  const each = new RegExp(`(?:^|${toldBetween})${toldOption}`, 'dy');
  const options: ToldOption[] = [];
  let read = 0;
  for (let match = each.exec(found[1]!); match !== null; match = each.exec(found[1]!)) {
    const [, name, value] = match.indices!.map((span) => part(start + span![0], start + span![1]));
    options.push({ name: name!, value: value! });
    read = each.lastIndex;
  }
  // What could not be taken apart is left to be told as no rows: nothing said is passed over.
  return read === found[1]!.length ? { options, end: found.index } : { options: [], end };
}

/** The first ` of ` of the body: a field or finding never has the word in its name. */
function findOf(text: string, start: number, end: number): { start: number; end: number } | null {
  const found = /\s+of\s+/.exec(text.slice(start, end));
  return found === null
    ? null
    : {
        start: start + found.index,
        end: start + found.index + found[0].length,
      };
}

function splitFields(part: Part, text: string, start: number, end: number): Cell[] {
  const fields: Cell[] = [];
  const separator = /\s*,\s*|\s+and\s+/g;
  let from = start;
  const body = text.slice(0, end);
  separator.lastIndex = start;
  for (let found = separator.exec(body); found !== null; found = separator.exec(body)) {
    fields.push(trimmed(part, text, from, found.index));
    from = found.index + found[0].length;
  }
  fields.push(trimmed(part, text, from, end));
  return fields;
}

function trimmed(part: Part, text: string, start: number, end: number): Cell {
  const slice = text.slice(start, end);
  const lead = slice.length - slice.trimStart().length;
  return part(start + lead, start + lead + slice.trim().length);
}

/** A part of a cell that may run over several lines, with its own line and column. */
function partOf(cell: Cell, start: number, end: number): Cell {
  const before = cell.text.slice(0, start);
  const breaks = before.split('\n');
  const line = cell.line + breaks.length - 1;
  const column = breaks.length === 1 ? cell.column + start : breaks.at(-1)!.length + 1;
  return { text: cell.text.slice(start, end), line, column };
}

function firstWords(text: string): string {
  return text.split(/\s+/).slice(0, 8).join(' ');
}
