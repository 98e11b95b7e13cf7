import { fieldOf } from '../record/field.js';
import { tableOf } from '../record/tables.js';
import { dayLength } from './calendar.js';
import type { ConversionExample } from './conversions.js';
import { DraftColumn, noDay } from './draft.js';
import { fault, faultCodes } from './fault.js';
import { Interner } from './interner.js';
import { makeCell } from './make-cell.js';
import { fieldSettings } from './read-columns.js';
import { readFieldRule, readMissing } from './read-field-rule.js';
import { readThousands } from './read-thousands.js';
import { ZoneClock } from './time-zone.js';
import { YamlDocument } from './yaml-document.js';

/** What one cell becomes under its settings. */
export interface Conversion {
  readonly cell: string;
  /** The value with its unit, `missing`, or the code of the problem that sets the row aside. */
  readonly becomes: string;
}

function settingsOf(text: string): readonly [YamlDocument, ReadonlyMap<string, NonNullable<YamlDocument['root']>>] {
  const yaml = new YamlDocument('', `{ ${text} }`);
  const known = [...fieldSettings, 'decimal', 'thousands', 'missing', 'time_zone', 'repeated'];
  return [yaml, yaml.settings(yaml.root, 'settings', known, [])];
}

function shown(column: DraftColumn): string {
  const { field, interner } = column;
  const value = column.values[0]!;
  switch (field.type) {
    case 'number':
    case 'integer':
      return Number.isNaN(value) ? 'missing' : `${Number(value.toFixed(9))} ${field.unit}`;
    case 'date':
      return value === noDay ? 'missing' : new Date(value * dayLength).toISOString().slice(0, 10);
    case 'instant':
      return Number.isNaN(value) ? 'missing' : new Date(value).toISOString().replace('.000Z', 'Z');
    case 'code':
      return value === 0 ? 'missing' : field.codes.codes[value - 1]!.code;
    default:
      return value === 0 ? 'missing' : interner!.textOf(value);
  }
}

/** What each cell of an example becomes, by the very reader that an import uses. */
export function convertExample(example: ConversionExample): readonly Conversion[] {
  const field = fieldOf(tableOf(example.table), example.field);
  if (field === null) throw new Error(`${example.table} have no ${example.field}`);
  const [yaml, settings] = settingsOf(example.column);
  const rule = readFieldRule(yaml, yaml.root!, field, ['cell'], settings);
  const [fileYaml, file] = settingsOf(example.file);
  const word = (name: string): string | null => (file.has(name) ? fileYaml.text(file.get(name)!, name) : null);
  const missing = file.has('missing') ? readMissing(fileYaml, file.get('missing')!) : [''];
  const thousands = readThousands(fileYaml, file.get('thousands'), word('decimal'));
  const repeated = word('repeated') === 'second' ? 'second' : null;
  const mistakes = [...yaml.problems, ...fileYaml.problems];
  if (mistakes.length > 0) throw new Error(mistakes.map(({ wanted }) => wanted).join('; '));
  const settingsOfFile = { decimalByte: word('decimal') === 'comma' ? 44 : 46, thousands, missing, repeated } as const;
  const zone = word('time_zone');
  return example.cells.map((cell) => {
    const holdsText = field.type === 'text' || field.type === 'reference' || field.type === 'pseudonym';
    const column = new DraftColumn(field, holdsText ? new Interner() : null);
    const clock = zone === null ? null : new ZoneClock(zone);
    const reader = makeCell(rule, settingsOfFile, column, clock, new Uint8Array(0));
    const bytes = Buffer.from(cell, 'utf8');
    const found = reader.read(bytes, 0, bytes.length, 0);
    // A row without a value that it must have is set aside; what the cell itself says is that there is none.
    const isThere = found === fault.none || found === fault.missingValue;
    return { cell, becomes: isThere ? shown(column) : faultCodes[found]! };
  });
}
