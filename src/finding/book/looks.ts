import type { BookTable } from '../../record/book.js';
import type { TextColumn } from '../../record/column.js';
import { type Component, componentOf } from '../../record/components.js';
import type { Records, RecordTable } from '../../record/records.js';
import { textOf } from './columns-of.js';
import { answer, codedColumn, codedField, translateCodes, yesNoColumn, yesNoField } from './derived-fields.js';
import { type FieldSource, lazyTable } from './lazy-table.js';
import { clustersOfInspection, fieldsOfInspection, inspectionsGive } from './of-inspection.js';
import { recordedFields } from './recorded-fields.js';

const areas: readonly Component['area'][] = ['exterior', 'propulsion', 'water-holding', 'equipment', 'trailer'];

/** One code a row from what the catalogue says of its component. */
function byComponent(table: RecordTable, codeFor: (component: Component) => number): Uint8Array {
  const { codes, dictionary } = textOf(table, 'component');
  const codeOfPart = dictionary.map((name) => {
    const component = componentOf(name);
    return component === null ? 0 : codeFor(component);
  });
  return translateCodes(codes, codeOfPart);
}

/** One answer a row from its state and finding. */
function byState(table: RecordTable, answerFor: (state: string, finding: string) => number): TextColumn {
  const state = textOf(table, 'state');
  const finding = textOf(table, 'finding');
  const width = finding.dictionary.length;
  const answers = state.dictionary.flatMap((one) => finding.dictionary.map((other) => answerFor(one, other)));
  const answered = new Uint8Array(table.rowCount);
  for (let row = 0; row < answered.length; row++) {
    answered[row] = answers[state.codes[row]! * width + finding.codes[row]!]!;
  }
  return yesNoColumn(answered);
}

function lookedAnswer(state: string): number {
  if (state === 'clean' || state === 'fouled') return answer.yes;
  return state === 'not checked' ? answer.no : answer.missing;
}

function settledAnswer(state: string, finding: string): number {
  if (state === 'clean') return answer.no;
  if (state !== 'fouled' || finding === '') return answer.missing;
  return finding === 'mussels' ? answer.yes : answer.no;
}

function lookFields(table: RecordTable): FieldSource[] {
  return [
    {
      field: codedField('area', areas, 'The group of parts it belongs to.'),
      build: () =>
        codedColumn(
          areas,
          byComponent(table, ({ area }) => areas.indexOf(area) + 1),
        ),
    },
    {
      field: yesNoField('hidden', 'Whether a plain look misses the part: it needs a mirror, a light or a hand.'),
      build: () => yesNoColumn(byComponent(table, ({ hidden }) => (hidden ? answer.yes : answer.no))),
    },
    {
      field: yesNoField('looked', 'Whether the part was looked at; missing where the craft does not carry it.'),
      build: () => byState(table, lookedAnswer),
    },
    {
      field: yesNoField(
        'settled',
        'Whether mussels were found on it; missing where it was not looked at, or the finding was left open.',
      ),
      build: () => byState(table, settledAnswer),
    },
  ];
}

/** Checks or rechecks with what the catalogue says of their part, and every field of their inspection. */
export function looksTable(
  records: Records,
  name: 'checks' | 'rechecks',
  inspections: BookTable,
  parentOf: () => Int32Array,
): BookTable {
  const table = records[name];
  const own = [...recordedFields(records, name), ...lookFields(table)];
  return lazyTable({
    name,
    row: table.definition.row,
    counted: 'looks',
    rowCount: table.rowCount,
    sources: [...own, ...fieldsOfInspection(inspections, parentOf)],
    clusterOf: clustersOfInspection(inspections, parentOf),
    origin: table.origin,
    parent: inspectionsGive(inspections, own, parentOf),
  });
}
