import type { Rule } from './rule.js';

function stops(code: string, meaning: string, remedy: string): Rule {
  return { code: `crosswalk-${code}`, scope: 'crosswalk', severity: 'stops', instead: [], meaning, remedy };
}

/** What can be wrong with a crosswalk; nothing is read by half a crosswalk. */
export const crosswalkRules: readonly Rule[] = [
  stops('not-yaml', 'the text is no YAML 1.2', 'Mend it at the place named.'),
  stops('wrong-shape', 'a map, list or text stands where another was wanted', 'Compare with a crosswalk that works.'),
  stops('unknown-setting', 'a setting has a name that nothing reads', 'Use a known name; the nearest is offered.'),
  stops('missing-setting', 'a setting without which the file cannot be read', 'Add it.'),
  stops('useless-setting', 'a setting that this field can make no use of', 'Remove it.'),
  stops('wrong-value', 'a setting has a value it cannot have', 'Use one of the values named.'),
  stops('unknown-table', 'no canonical table has that name', 'Use a known name; the nearest is offered.'),
  stops('unknown-field', 'the table has no field of that name', 'Use a known name; the nearest is offered.'),
  stops('unknown-code', 'the code list has no code of that name', 'Use a known code; the nearest is offered.'),
  stops('unknown-column', 'the file has no column of that name', 'Name it under columns first.'),
  stops('unknown-rule', 'no rule has that code', 'Use a code of this list; the nearest is offered.'),
  stops('missing-field', 'no column gives a field without which no row is kept', 'Name its column, or a constant.'),
  stops('bad-pattern', 'a date pattern that cannot be read', 'Use the letters named.'),
  stops('twice', 'one field has two sources, or one column two uses', 'Keep one of them.'),
  stops('open-question', 'a drafted line waits for a person to decide', 'Answer it, and take the word open away.'),
];
