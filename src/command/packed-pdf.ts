import { deflateSync } from 'node:zlib';

/** How many objects stand in one stream: a reader unpacks one to get at any of them. */
const inOneStream = 400;

interface PdfObject {
  readonly number: number;
  readonly text: string;
}

/**
 * A PDF as Chromium writes it, with the objects that are no streams packed into object streams: the tags of a page of tables
 * are thousands of small objects, which else make up most of the file. What describes the document stays open, so that its date
 * can be read and set. A PDF that is written otherwise is given back as it is. ISO 32000-1, 7.5.7 and 7.5.8.
 */
export function packedPdf(pdf: Buffer): Buffer {
  const text = pdf.toString('latin1');
  const [, trailer] = /\ntrailer\n<<([^<>]*)>>\nstartxref\n\d+\n%%EOF\n?$/.exec(text) ?? [];
  const number = (name: string): number => Number(new RegExp(`/${name} (\\d+)`).exec(trailer ?? '')?.[1]);
  const [size, root, info] = [number('Size'), number('Root'), number('Info')];
  const objects = readObjects(text, size);
  if (objects === null || !objects.some((object) => object.number === root)) return pdf;

  const isOpen = (object: PdfObject): boolean => object.number === info || /\bstream\r?\n/.test(object.text);
  let written = `%PDF-1.5\n${text.slice(text.indexOf('\n') + 1, text.indexOf('\n', text.indexOf('\n') + 1) + 1)}`;
  // For each object its kind, then where it begins; or in which stream it stands, and as which one there.
  const places: (readonly [kind: number, where: number, at: number])[] = Array.from({ length: size }, () => [0, 0, 0]);
  const write = (object: PdfObject): void => {
    places[object.number] = [1, written.length, 0];
    written += `${object.number} 0 obj\n${object.text}\nendobj\n`;
  };
  objects.filter(isOpen).forEach(write);
  const packed = objects.filter((object) => !isOpen(object));
  for (let from = 0; from < packed.length; from += inOneStream) {
    const these = packed.slice(from, from + inOneStream);
    const stream = places.length;
    let head = '';
    let body = '';
    these.forEach((object, at) => {
      head += `${object.number} ${body.length} `;
      body += `${object.text}\n`;
      places[object.number] = [2, stream, at];
    });
    const described = `/Type /ObjStm /N ${these.length} /First ${head.length}`;
    write({ number: stream, text: streamOf(described, Buffer.from(head + body, 'latin1')) });
  }
  const start = written.length;
  places.push([1, start, 0]);
  const rows = Buffer.alloc(places.length * 7);
  places.forEach(([kind, where, at], row) => {
    rows.writeUInt8(kind, row * 7);
    rows.writeUInt32BE(where, row * 7 + 1);
    rows.writeUInt16BE(at, row * 7 + 5);
  });
  const described = `/Type /XRef /Size ${places.length} /W [1 4 2] /Root ${root} 0 R /Info ${info} 0 R`;
  written += `${places.length - 1} 0 obj\n${streamOf(described, rows)}\nendobj\nstartxref\n${start}\n%%EOF\n`;
  return Buffer.from(written, 'latin1');
}

function streamOf(described: string, bytes: Buffer): string {
  const packed = deflateSync(bytes, { level: 9 });
  return `<<${described} /Filter /FlateDecode /Length ${packed.length}>>\nstream\n${packed.toString('latin1')}\nendstream`;
}

/** Every object by the table of their places; null where there is none, or something else stands at a place. */
function readObjects(text: string, size: number): readonly PdfObject[] | null {
  const table = text.lastIndexOf(`\nxref\n0 ${size}\n`);
  if (table < 0) return null;
  const first = table + `\nxref\n0 ${size}\n`.length;
  const objects: PdfObject[] = [];
  const begins: number[] = [];
  for (let number = 0; number < size; number++) {
    const row = text.slice(first + number * 20, first + number * 20 + 20);
    if (!/^\d{10} \d{5} [nf]\s\s$/.test(row)) return null;
    begins.push(row[17] === 'n' ? Number(row.slice(0, 10)) : -1);
  }
  const ordered = [...begins.filter((begin) => begin >= 0), table + 1].sort((a, b) => a - b);
  const endOf = new Map(ordered.map((begin, at) => [begin, ordered[at + 1]]));
  for (const [number, begin] of begins.entries()) {
    if (begin < 0) continue;
    const head = `${number} 0 obj\n`;
    const whole = text.slice(begin, endOf.get(begin));
    const end = whole.lastIndexOf('\nendobj\n');
    if (!whole.startsWith(head) || end < 0) return null;
    objects.push({ number, text: whole.slice(head.length, end) });
  }
  return objects;
}
