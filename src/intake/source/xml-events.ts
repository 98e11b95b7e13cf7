import { SaxesParser } from 'saxes';
import { SourceError } from './text-source.js';

/** What is done with the parts of an XML document as they come by; names are without their prefix. */
export interface XmlEvents {
  readonly open: (name: string, attributes: Readonly<Record<string, string>>) => void;
  readonly close?: (name: string) => void;
  readonly text?: (text: string) => void;
}

function plainName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

/**
 * Reads an XML document in UTF-8 from its bytes. A document type is refused, so that no entity can be declared; what is not
 * well-formed is thrown as a `SourceError`.
 */
export async function readXml(name: string, chunks: AsyncIterable<Uint8Array>, events: XmlEvents): Promise<void> {
  const damaged = (said: string) =>
    new SourceError('damaged-workbook', `${name}: ${said}`, 'a whole .xlsx workbook', 'Save or copy it again.');
  const parser = new SaxesParser();
  parser.on('doctype', () => {
    throw damaged('it declares a document type');
  });
  parser.on('opentag', (tag) => events.open(plainName(tag.name), tag.attributes));
  parser.on('closetag', (tag) => events.close?.(plainName(tag.name)));
  parser.on('text', (text) => events.text?.(text));
  parser.on('cdata', (text) => events.text?.(text));
  const decoder = new TextDecoder('utf-8', { fatal: true });
  try {
    for await (const bytes of chunks) parser.write(decoder.decode(bytes, { stream: true }));
    parser.write(decoder.decode());
    parser.close();
  } catch (error) {
    if (error instanceof SourceError) throw error;
    throw damaged(error instanceof Error ? error.message : String(error));
  }
}
