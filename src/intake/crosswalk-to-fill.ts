import type { Field, TableDefinition } from '../record/field.js';
import { tables } from '../record/tables.js';

/** The word that marks what a person must decide. */
const decide = 'DECIDE';

/**
 * A crosswalk for a person to fill in: every table and field named with its meaning, what must be decided marked, and lines
 * that may be left out behind a `#`. It can be read as it stands, and with every line made live.
 */
export function crosswalkToFill(): string {
  const needed = ['stations', 'inspections'];
  const inOrder = [...tables].sort((a, b) => Number(needed.includes(b.name)) - Number(needed.includes(a.name)));
  return `${[...opening, ...inOrder.flatMap((table) => ['', ...fileOf(table)])].join('\n')}\n`;
}

const opening = [
  '# What the exports of one program mean. One crosswalk for each export format; nothing is guessed at import.',
  `# Lines marked ${decide} need a person. Lines behind "#: " may be left out: take the mark away where your file has such a column.`,
  '# On the left of a colon stands the heading of your column, exactly as in the file. EVERY column of a file must be named:',
  '#   MEMO: { ignore: free text that may name people }   a column that is not read, and why',
  '#   OWNER: { private: drop }                           a private column: its values never reach the store',
  '#   HULL_NO: { field: craft, private: hash }           a private column that a keyed hash stands for, to follow repeat visits',
  '# Where a word of yours stands for one of ours, say so: codes: { RAMP: launch }. Every word that occurs must be there.',
  `crosswalk: my-exports # ${decide}: a short name`,
  `about: What these exports are # ${decide}`,
  `data_as_of: 2026-11-30 18:00 # ${decide}: when they were exported; craft still held are held at least until then`,
  `data_time_zone: America/Denver # ${decide}: the zone of that time, by its name in the time zone database`,
  'files:',
];

function fileOf(table: TableDefinition): readonly string[] {
  return [
    `  # ${table.name}: a row is ${table.row}.`,
    `  - files: ${table.name.replaceAll('_', '-')}.csv # ${decide}: which files; * stands for any letters`,
    `    table: ${table.name}`,
    `    dialect: { encoding: utf-8, delimiter: comma, quote: double, header_line: 1 } # ${decide}`,
    `    time_zone: America/Denver # ${decide}: the zone of its times`,
    `    missing: [""] # ${decide}: what stands where nothing was written, such as ["", "NA"]`,
    '    columns:',
    ...table.fields.flatMap(fieldLines),
  ];
}

function fieldLines(field: Field): readonly string[] {
  const column = field.name.toUpperCase();
  const mark = field.required === true ? '' : '#: ';
  const lines = [`      # ${field.required === true ? 'Needed. ' : ''}${field.meaning}${typeInWords(field)}`];
  if (field.type !== 'code') return [...lines, `      ${mark}${column}: { field: ${field.name}${setting(field)} }`];
  return [
    ...lines,
    `      ${mark}${column}:`,
    `      ${mark}  field: ${field.name}`,
    `      ${mark}  codes: # ${decide}: your word on the left`,
    ...field.codes.codes.map(
      ({ code, meaning }) => `      ${mark}    ${yamlText(`MY ${code}`)}: ${yamlText(code)} # ${meaning}`,
    ),
  ];
}

function typeInWords(field: Field): string {
  switch (field.type) {
    case 'number':
    case 'integer':
      return ` In ${field.unit}; say unit: where yours is another.`;
    case 'reference':
      return ` As it stands in the file of ${field.to}.`;
    case 'date':
    case 'instant':
      return ` ${decide}: how it is written.`;
    default:
      return '';
  }
}

function setting(field: Field): string {
  if (field.type === 'date') return ', pattern: yyyy-MM-dd';
  if (field.type === 'instant') return ', pattern: yyyy-MM-dd HH:mm';
  return field.type === 'pseudonym' ? ', private: hash' : '';
}

function yamlText(text: string): string {
  return /^[A-Za-z][A-Za-z ]*$/.test(text) && !/^(yes|no|true|false|null|on|off)$/i.test(text)
    ? text
    : JSON.stringify(text);
}
