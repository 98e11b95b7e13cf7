import type { Node } from 'yaml';
import type { Dialect } from './crosswalk.js';
import { mostUnpacked } from './source/archive.js';
import { encodings } from './source/encoding.js';
import type { YamlDocument } from './yaml-document.js';

const delimiters: Readonly<Record<string, number>> = { comma: 44, semicolon: 59, tab: 9, pipe: 124 };
const quotes: Readonly<Record<string, number | null>> = { double: 34, single: 39, none: null };
const mebibyte = 1_048_576;

/** What RFC 4180 describes: commas, double quotes, the header on the first line; in UTF-8. */
export const plainDialect: Dialect = {
  delimiter: 44,
  quote: 34,
  encoding: 'utf-8',
  headerLine: 1,
  headerSpan: 1,
  looseHeadings: false,
  isSheet: false,
  spreadsMerged: false,
  mostUnpacked,
};

/** The same dialect for the text that is made from a sheet. */
export function sheetDialect(dialect: Dialect): Dialect {
  return { ...dialect, delimiter: 44, quote: 34, encoding: 'utf-8', isSheet: true };
}

function readHeaderLine(yaml: YamlDocument, node: Node): Pick<Dialect, 'headerLine' | 'headerSpan'> {
  const text = yaml.text(node, 'a line number') ?? '1';
  if (text === 'by name') return { headerLine: null, headerSpan: 1 };
  const lines = /^([1-9]\d{0,3})(?:-([1-9]\d{0,3}))?$/u.exec(text);
  const first = Number(lines?.[1]);
  const last = Number(lines?.[2] ?? first);
  if (lines !== null && last >= first && last < first + 5) return { headerLine: first, headerSpan: last - first + 1 };
  const remedy = 'Count the lines above it: 3, or 3-4 where it runs over two lines, or by name.';
  yaml.complain('wrong-value', node, text, 'the line of the header, from 1', remedy);
  return { headerLine: 1, headerSpan: 1 };
}

const known = ['encoding', 'delimiter', 'quote', 'header_line', 'headers', 'merged', 'unpacked_mib'];

/** The dialect of a file; settings that are left out are as in RFC 4180. */
export function readDialect(yaml: YamlDocument, node: Node): Dialect {
  const settings = yaml.settings(node, 'dialect', known, []);
  const word = <W extends string>(name: string, words: readonly W[]): W | null => {
    const setting = settings.get(name);
    const said = setting === undefined ? null : yaml.word(setting, name, words);
    return words.find((entry) => entry === said) ?? null;
  };
  const delimiter = word('delimiter', Object.keys(delimiters)) ?? 'comma';
  const quote = word('quote', Object.keys(quotes)) ?? 'double';
  const headerNode = settings.get('header_line');
  const header = headerNode === undefined ? plainDialect : readHeaderLine(yaml, headerNode);
  const unpackedNode = settings.get('unpacked_mib');
  const unpacked = unpackedNode === undefined ? null : yaml.text(unpackedNode, 'a number of MiB');
  if (unpacked !== null && !/^[1-9]\d{0,4}$/u.test(unpacked)) {
    yaml.complain('wrong-value', unpackedNode!, unpacked, 'a number of MiB', 'Write a whole number, such as 1024.');
  }
  return {
    delimiter: delimiters[delimiter]!,
    quote: quotes[quote]!,
    encoding: word('encoding', encodings) ?? 'utf-8',
    headerLine: header.headerLine,
    headerSpan: header.headerSpan,
    looseHeadings: word('headers', ['exact', 'loose']) === 'loose',
    isSheet: false,
    spreadsMerged: word('merged', ['spread', 'set aside']) === 'spread',
    mostUnpacked: unpacked === null || !/^\d+$/u.test(unpacked) ? mostUnpacked : Number(unpacked) * mebibyte,
  };
}
