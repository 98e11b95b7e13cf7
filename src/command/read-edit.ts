import type { AddedPart, DocumentEdit } from '../notebook/edit/document-edit.js';

type Given = Readonly<Record<string, unknown>>;

const addedParts: readonly string[] = [
  'paragraph',
  'heading',
  'inputs',
  'records',
  'figures',
  'sheet',
  'chart',
] satisfies AddedPart[];

/** The edit that a page asks for; null for anything that is none. */
export function readEdit(value: unknown): DocumentEdit | null {
  if (typeof value !== 'object' || value === null) return null;
  const given = value as Given;
  const { change, line, column, first, last, below, was, now, down, part } = given;
  switch (change) {
    case 'cell':
      return isLine(line) && isLine(column) && isText(was) && isText(now) ? { change, line, column, was, now } : null;
    case 'lines':
      return isLine(first) && isLine(last) && isText(was) && isText(now) ? { change, first, last, was, now } : null;
    case 'add row':
      return isLine(below) ? { change, below } : null;
    case 'take row':
      return isLine(line) ? { change, line } : null;
    case 'move row':
      return isLine(line) && typeof down === 'boolean' ? { change, line, down } : null;
    case 'add part':
      return isLine(below, 0) && isText(part) && addedParts.includes(part)
        ? { change, below, part: part as AddedPart }
        : null;
    case 'take part':
      return isLine(first) && isLine(last) ? { change, first, last } : null;
    case 'move part':
      return isLine(first) && typeof down === 'boolean' ? { change, first, down } : null;
    default:
      return null;
  }
}

function isLine(value: unknown, least = 1): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= least && value < 1e7;
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}
