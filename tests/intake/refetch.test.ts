import { join } from 'node:path';
import { expect, test } from 'vitest';
import { AsideTexts } from '../../src/intake/aside-texts.js';
import { textHeld } from '../../src/intake/held-text.js';
import { plainDialect } from '../../src/intake/read-dialect.js';
import { type FetchedRows, fetchRows } from '../../src/intake/refetch/fetch-rows.js';
import type { WantedRows } from '../../src/intake/refetch/wanted-rows.js';
import { inFolder } from './small-import.js';

const rows = ['no,craft,seen', '1,Heron,mud', '2,"Loon ""L""",weed', '3,Grebe,mud', '4,Teal,shell'];
const file = rows.map((row) => `${row}\n`).join('');
/** Where a line of the file begins, in bytes. */
const startOf = (line: number) => rows.slice(0, line - 1).join('\n').length + (line > 1 ? 1 : 0);

/** The cells and the text of lines 3 and 5, found from the lines before them; `craft` is private. */
function wantedFrom(from: string): WantedRows {
  return {
    from,
    file: 'looks.csv',
    settings: { dialect: plainDialect, decimalByte: 46 },
    width: 3,
    withheld: [1],
    lines: Uint32Array.of(3, 5),
    nearLines: Uint32Array.of(2, 4),
    nearOffsets: Float64Array.of(startOf(2), startOf(4)),
    keepsText: Uint8Array.of(1, 0),
    textBytes: 10,
    positions: Int32Array.of(1, 2, 2),
    cellEnds: Uint32Array.of(2, 3),
  };
}

function cellsOf({ cells, cellEnds }: FetchedRows): readonly string[] {
  return [...cellEnds].map((end, cell) =>
    Buffer.from(cells.subarray(cell === 0 ? 0 : cellEnds[cell - 1], end)).toString(),
  );
}

function textsOf({ rows: packed }: FetchedRows): readonly string[] {
  const texts = new AsideTexts();
  texts.append(packed, 0);
  return Array.from({ length: texts.size }, (_, at) => `${texts.line(at)} ${textHeld(texts.textBytes(at))}`);
}

test('rows are fetched by the lines they stand on, private cells withheld', async () => {
  await inFolder({ 'looks.csv': file }, async (folder) => {
    const fetched = await fetchRows(wantedFrom(folder));
    expect(fetched.changedAt).toBeNull();
    expect(cellsOf(fetched)).toEqual(['withheld', 'weed', 'shell']);
    expect(textsOf(fetched)).toEqual(['3 2,withheld,weed']);
  });
});

test('a row that is no longer where it stood is told by its line, as is a file that is gone', async () => {
  const changes = [
    { text: file.replace('4,Teal,shell', '4,Teal,shell,more'), line: 5 },
    { text: file.replace('4,Teal,shell\n', ''), line: 5 },
    { text: file.replace('2,"Loon ""L""",weed', '2,Loon'), line: 3 },
  ];
  for (const { text, line } of changes) {
    await inFolder({ 'looks.csv': text }, async (folder) => {
      expect((await fetchRows(wantedFrom(folder))).changedAt).toBe(line);
    });
  }
  expect((await fetchRows(wantedFrom(join('no', 'such', 'folder')))).changedAt).toBe(3);
});
