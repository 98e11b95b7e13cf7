import type { Node } from 'yaml';
import type { Dialect } from './crosswalk.js';
import type { YamlDocument } from './yaml-document.js';

const delimiters: Readonly<Record<string, number>> = { comma: 44, semicolon: 59, tab: 9, pipe: 124 };
const quotes: Readonly<Record<string, number | null>> = { double: 34, single: 39, none: null };

/** What RFC 4180 describes: commas, double quotes, the header on the first line. */
export const plainDialect: Dialect = { delimiter: 44, quote: 34, headerLine: 1 };

/** The dialect of a file; settings that are left out are as in RFC 4180. */
export function readDialect(yaml: YamlDocument, node: Node): Dialect {
  const settings = yaml.settings(node, 'dialect', ['encoding', 'delimiter', 'quote', 'header_line'], []);
  const word = (name: string, known: readonly string[]): string | null => {
    const setting = settings.get(name);
    return setting === undefined ? null : yaml.word(setting, name, known);
  };
  word('encoding', ['utf-8']);
  const delimiter = word('delimiter', Object.keys(delimiters)) ?? 'comma';
  const quote = word('quote', Object.keys(quotes)) ?? 'double';
  const headerNode = settings.get('header_line');
  const header = headerNode === undefined ? '1' : (yaml.text(headerNode, 'a line number') ?? '1');
  if (!/^[1-9]\d{0,3}$/u.test(header)) {
    yaml.complain('wrong-value', headerNode!, header, 'the line of the header, from 1', 'Count the lines above it.');
    return plainDialect;
  }
  return { delimiter: delimiters[delimiter]!, quote: quotes[quote]!, headerLine: Number(header) };
}
