import { fieldOf } from '../../record/field.js';
import type { ColumnProposal, CombineProposal, FileProposal, FoldProposal, ProposedCodes } from './proposal.js';

const plainScalar = /^[A-Za-z_][A-Za-z0-9_ ]*$/u;
const reserved = /^(?:true|false|null|yes|no|on|off|y|n)$/iu;
const widest = 110;

/** A text as YAML 1.2 writes it: bare where it can only be read as this text, in double quotes otherwise. */
function scalar(text: string): string {
  return plainScalar.test(text) && !reserved.test(text) && !text.endsWith(' ') ? text : JSON.stringify(text);
}

/** A comment of one line; whatever it quotes cannot end it. */
function comment(text: string): string {
  return `# ${text.replace(/[\r\n]+/gu, ' ')}`;
}

function questionLines(questions: readonly string[], indent: string): readonly string[] {
  if (questions.length === 0) return [];
  return [`${indent}open:`, ...questions.map((question) => `${indent}  - ${JSON.stringify(question)}`)];
}

function codeLines(codes: ProposedCodes, seasonsOf: ReadonlyMap<string, string>, indent: string): readonly string[] {
  const within = (text: string, code: string): string => {
    const seasons = seasonsOf.get(text);
    return seasons === undefined ? code : `{ ${JSON.stringify(seasons)}: ${code} }`;
  };
  const known = [...codes].flatMap(([text, code]) =>
    code === null ? [] : [`${scalar(text)}: ${within(text, scalar(code))}`],
  );
  const open = [...codes].flatMap(([text, code]) => (code === null ? [text] : []));
  const flow = `${indent}codes: { ${known.join(', ')} }`;
  if (open.length === 0 && flow.length <= widest) return [flow];
  return [
    `${indent}codes:`,
    ...known.map((entry) => `${indent}  ${entry}`),
    ...open.map((text) => `${indent}  # ${scalar(text)}: ${within(text, 'which code?')}`),
  ];
}

function useOf({ use }: ColumnProposal): readonly string[] {
  switch (use.kind) {
    case 'field':
      return [`field: ${use.field}`, ...(use.hashed ? ['private: hash'] : [])];
    case 'drop':
      return ['private: drop'];
    case 'ignore':
      return [`ignore: ${scalar(use.reason)}`];
    default:
      return [];
  }
}

function columnLines(proposal: ColumnProposal): readonly string[] {
  const { column, pattern, unit, between, codes, seasons, water, sureness, why, questions } = proposal;
  const settings = [
    ...useOf(proposal),
    ...(pattern === null ? [] : [`pattern: ${JSON.stringify(pattern)}`]),
    ...(unit === null ? [] : [`unit: ${scalar(unit)}`]),
    ...(between === null ? [] : [`several: { between: ${JSON.stringify(between)}, take: first }`]),
    ...(water === null ? [] : ['match: aliases']),
    ...(water === null || water.regionColumn === null ? [] : [`region_column: ${scalar(water.regionColumn)}`]),
    ...(water === null || water.region === null ? [] : [`region: ${scalar(water.region)}`]),
  ];
  const said = `      ${comment(`${sureness}: ${why}`)}`;
  if (codes === null && questions.length === 0) return [said, `      ${scalar(column)}: { ${settings.join(', ')} }`];
  return [
    said,
    `      ${scalar(column)}:`,
    ...settings.map((setting) => `        ${setting}`),
    ...(codes === null ? [] : codeLines(codes, seasons, '        ')),
    ...questionLines(questions, '        '),
  ];
}

function combineLines({ field, columns, pattern, sureness, why, questions }: CombineProposal): readonly string[] {
  return [
    `      ${comment(`${sureness}: ${why}`)}`,
    `      ${field}:`,
    `        columns: [${columns.map(scalar).join(', ')}]`,
    `        pattern: ${JSON.stringify(pattern)}`,
    ...questionLines(questions, '        '),
  ];
}

function foldLines({ columns, values, why }: FoldProposal): readonly string[] {
  const marks = values.flatMap(({ text, state, finding, times }) => {
    const said = [...(state === null ? [] : [`state: ${state}`]), ...(finding === null ? [] : [`finding: ${finding}`])];
    const counted = `met ${times} times`;
    if (state === null) return [`        # ${scalar(text)}: { state: ?, finding: ? }   ${counted}`];
    return [
      `        ${comment(`likely: ${counted}`)}`,
      `        ${text === '' ? '""' : scalar(text)}: { ${said.join(', ')} }`,
    ];
  });
  return [
    `    ${comment(`likely: ${why}`)}`,
    '    fold:',
    '      table: checks',
    '      columns:',
    ...columns.flatMap(({ column, component, side, sureness }) => [
      ...(sureness === 'sure' ? [] : [`        ${comment(`${sureness}: the heading is like the part`)}`]),
      `        ${scalar(column)}: { component: ${scalar(component)}, side: ${side} }`,
    ]),
    '      values:',
    ...marks,
  ];
}

/** What a table needs beside its columns: the season of codes, and how double entries are known. */
function furtherLines({ table, columns, combined, seasonOf }: FileProposal): readonly string[] {
  const fields = [
    ...combined.map(({ field }) => field),
    ...columns.flatMap(({ use }) => (use.kind === 'field' ? [use.field] : [])),
  ];
  const alike = ['station', 'craft', 'started_at'];
  const isInspections = table.name === 'inspections' && fields.includes('started_at');
  return [
    ...(seasonOf === null ? [] : [`    season_of: ${seasonOf}`]),
    ...(isInspections && alike.every((name) => fields.includes(name) && fieldOf(table, name) !== null)
      ? [
          `    ${comment('likely: the same craft at the same place and minute is one event; keep: first, last, neither or both')}`,
          `    duplicates: { alike: [${alike.join(', ')}], keep: first }`,
        ]
      : []),
  ];
}

function fileLines(file: FileProposal): readonly string[] {
  const { headerLine, headerSpan, totals } = file;
  const header = headerSpan === 1 ? headerLine : `${headerLine}-${headerLine + headerSpan - 1}`;
  const looked = `${file.isWhole ? 'all' : 'the first, middle and last'} ${file.rows} rows were looked at`;
  const patterns = file.patterns.map((pattern) => JSON.stringify(pattern));
  return [
    `  - files: ${patterns.length === 1 ? patterns[0] : `[${patterns.join(', ')}]`}`,
    `    ${comment(`${file.tableSureness}: ${file.tableWhy}; ${looked}`)}`,
    `    table: ${file.table.name}`,
    ...questionLines(file.questions, '    '),
    `    dialect: { encoding: ${file.encoding}, delimiter: ${file.delimiter}, quote: double, header_line: ${header} }`,
    ...(file.timeZone === null ? [] : [`    time_zone: ${file.timeZone}`]),
    `    decimal: ${file.decimal}`,
    ...(file.thousands === null ? [] : [`    thousands: ${file.thousands}`]),
    `    missing: [${file.missing.map((text) => JSON.stringify(text)).join(', ')}]`,
    ...(totals === null
      ? []
      : [
          `    ${comment(`likely: ${totals.rows} rows begin so, and most of their cells are blank`)}`,
          `    leave_out: [{ first_cell: ${JSON.stringify(`${totals.like}*`)}, because: totals }]`,
        ]),
    ...furtherLines(file),
    ...(file.combined.length === 0 ? [] : ['    combine:', ...file.combined.flatMap(combineLines)]),
    file.columns.length === 0 ? '    columns: {}' : '    columns:',
    ...file.columns.flatMap(columnLines),
    ...(file.fold === null ? [] : foldLines(file.fold)),
  ];
}

/**
 * A crosswalk as YAML, with how sure each line is and why beside it, and what a person must decide under `open`; `aliasFile`
 * is the file of aliases to be filled in beside it, null for none, and `questions` those of the draft as a whole;
 * `passedOver` are files that hold no table.
 */
export function writeDraft(
  name: string,
  files: readonly FileProposal[],
  aliasFile: string | null,
  questions: readonly string[],
  passedOver: readonly string[] = [],
): string {
  const washes = files.some(({ table }) => table.name === 'decontaminations');
  return [
    '# Drafted from the headings and values of exported files, for a person to review. Nothing here was decided.',
    '#   sure: heading and values agree   likely: one of them says so   unsure: somebody must look',
    '# Every entry under "open" waits for an answer: change the lines beside it, then take the entry away. Until all are gone',
    '# the crosswalk refuses to import. Where it says "which code?", write the code and take the # away.',
    `crosswalk: ${scalar(name)}`,
    'about: ""',
    ...(washes ? ['# data_as_of: 2025-11-30 18:00', '# data_time_zone: America/Denver'] : []),
    ...questionLines(questions, ''),
    ...(aliasFile === null
      ? []
      : [
          comment('the names of waters that match none, the most frequent first'),
          `aliases: ${JSON.stringify(aliasFile)}`,
        ]),
    ...passedOver.map((file) => comment(`${file} holds no table, and nothing is drafted for it`)),
    'files:',
    files.map((file) => fileLines(file).join('\n')).join('\n\n'),
    '',
  ].join('\n');
}
