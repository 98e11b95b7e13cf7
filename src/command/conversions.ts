import { conversionExamples } from '../intake/conversions.js';
import { convertExample } from '../intake/convert-example.js';
import { sheetExamples } from '../intake/source/sheet-examples.js';
import { unitSpellings } from '../intake/units.js';
import { exitCodes } from './exit-codes.js';
import { say, sayJson } from './terminal.js';

/** The words of `rampbook conversions`. */
export interface ConversionsWords {
  readonly json?: boolean;
}

function code(text: string): string {
  return text === '' ? 'blank' : `\`${text.replaceAll('|', '\\|')}\``;
}

function sayMarkdown(title: string, head: readonly string[], rows: readonly (readonly string[])[]): void {
  say(`## ${title}`);
  say();
  for (const row of [head, head.map(() => '---'), ...rows]) say(`| ${row.join(' | ')} |`);
  say();
}

/** Prints what cells become under which settings, as Markdown tables computed by the reader itself, or as JSON. */
export function conversionsCommand({ json }: ConversionsWords): number {
  const cells = conversionExamples.flatMap(({ about, table, field, column, file, ...example }) =>
    convertExample({ about, table, field, column, file, ...example }).map(({ cell, becomes }) => {
      return { about, table, field, column, file, cell, becomes };
    }),
  );
  const sheets = sheetExamples();
  if (json === true) {
    sayJson({ cells, units: unitSpellings, sheets });
    return exitCodes.fine;
  }
  sayMarkdown(
    'What cells become',
    ['what', 'field', 'settings of the column', 'settings of the file', 'cell', 'becomes'],
    cells.map(({ about, field, column, file, cell, becomes }) => {
      return [
        about,
        code(field),
        ...[column, file].map((text) => (text === '' ? '' : code(text))),
        code(cell),
        becomes,
      ];
    }),
  );
  sayMarkdown(
    'How units may be spelt, in capitals or not',
    ['unit', 'spellings'],
    Object.entries(unitSpellings).map(([unit, spellings]) => [unit, spellings.map(code).join(' ')]),
  );
  sayMarkdown(
    'What numbers of a sheet are read as, before the settings above apply',
    ['stored', 'format', 'days counted from', 'text'],
    sheets.map(({ stored, format, base, text }) => [code(stored), code(format), String(base), code(text)]),
  );
  return exitCodes.fine;
}
