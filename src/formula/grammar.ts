/** One rule of the grammar: its name, its form, and what it is for. Quoted words stand as they are. */
export interface GrammarRule {
  readonly rule: string;
  readonly form: string;
  readonly meaning: string;
}

/** The grammar of a formula, which the reader follows method by method: { } any number of times, [ ] at most once. */
export const grammar: readonly GrammarRule[] = [
  {
    rule: 'formula',
    form: '[ either "of" ] rows  or  either',
    meaning: 'A value, or rows and what is taken of each of them.',
  },
  {
    rule: 'rows',
    form: '[ table, selection or sheet ] [ "here" ] [ "where" either ]',
    meaning:
      'Rows. In a sheet `here` keeps those that agree with the row’s group; without a table the group itself is meant.',
  },
  { rule: 'either', form: 'both { "or" both }', meaning: 'At least one of several conditions.' },
  { rule: 'both', form: 'negation { "and" negation }', meaning: 'All of several conditions.' },
  { rule: 'negation', form: '[ "not" ] comparison', meaning: 'A condition turned round.' },
  {
    rule: 'comparison',
    form: 'sum [ "is" [ "not" ] ( sum or "missing" ), or [ "not" ] "in" list, or [ "not" ] "between" sum "and" sum, or ( "<" "<=" ">" ">=" ) sum ]',
    meaning: 'Two values compared. `between` includes both ends.',
  },
  {
    rule: 'list',
    form: '"(" either { "," either } ")"  or the name of an input that is a list',
    meaning: 'Several values, one of which will do.',
  },
  { rule: 'sum', form: 'product { ( "+" "-" ) product }', meaning: 'Values added and subtracted.' },
  { rule: 'product', form: 'signed { ( "*" "×" "/" "÷" ) signed }', meaning: 'Values multiplied and divided.' },
  { rule: 'signed', form: '[ "-" ] primary', meaning: 'A number with its sign turned.' },
  {
    rule: 'primary',
    form: 'number, "text", name, call, lookup, other inputs, or "(" either ")"',
    meaning: 'The smallest parts. A text is in double quotes; a double quote inside it is written twice.',
  },
  { rule: 'call', form: 'name "(" [ formula { "," formula } ] ")"', meaning: 'A function with its arguments.' },
  {
    rule: 'lookup',
    form: 'column "of" sheet "for" ( primary or "(" either { "," either } ")" )',
    meaning: 'What a sheet’s column holds in the row of that key; a sheet of several keys needs them all.',
  },
  {
    rule: 'other inputs',
    form: 'figure "with" input "as" signed { "with" input "as" signed }',
    meaning: 'The figure as it would be if an input had another value.',
  },
];
