import * as codes from '../codes.js';
import { components } from '../components.js';
import type { CodeList, TableDefinition } from '../field.js';
import { code, needed, reference } from '../fields.js';

/** The component catalogue as a code list. */
export const componentCodes: CodeList = {
  name: 'component',
  source: 'the component catalogue; trade checklists, common practice',
  codes: components.map(({ component, area }) => ({ code: component, meaning: `${area} part` })),
};

/** What one look at one part records; shared by first looks and rechecks. */
export const lookFields = [
  needed(code('component', componentCodes, 'The part looked at.')),
  needed(code('side', codes.side, 'Which side of the craft.')),
  needed(code('state', codes.checkState, 'Whether the part is there, was looked at, and what was seen.')),
  code('finding', codes.finding, 'What was found on a fouled part.'),
  code('stage', codes.stage, 'The mussels’ stage of life.'),
  code('abundance', codes.abundance, 'How many there were.'),
  code('viability', codes.viability, 'Whether they were judged alive.'),
  code('found_by', codes.foundBy, 'How they were found.'),
] as const;

/** First looks at parts of craft. */
export const checks: TableDefinition = {
  name: 'checks',
  row: 'one component, one side, of one inspection',
  key: ['inspection', 'component', 'side'],
  fields: [needed(reference('inspection', 'inspections', 'The inspection it belongs to.')), ...lookFields],
};
