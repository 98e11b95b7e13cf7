/** The fixed words of the methods page, and of the links to it. */
export const methodsWords = {
  title: 'Methods',
  about:
    'How every finding and every statistic is defined and computed, with its source. The worked examples are computed by the program itself when this page is made, from made-up records of some 480 inspections, so that what stands here cannot drift from what the reports show.',
  link: 'Every finding and statistic, with its definition, formula, source and a worked example',
  findings: 'Findings',
  cautions: 'Cautions',
  asked: 'Asked of',
  rowsOf: (table: string): string => `rows of ${table}`,
  definition: 'Definition',
  numerator: 'Numerator',
  denominator: 'Denominator',
  leftOut: 'Left out',
  method: 'Method',
  formula: 'Formula',
  source: 'Source',
  told: 'May be told',
  option: (name: string, meaning: string, choices: readonly string[] | null, usual: string | number | null): string =>
    `${name}: ${meaning}${choices === null ? '' : ` One of ${choices.map((choice) => `“${choice}”`).join(', ')}.`}${
      usual === null ? '' : ` Usually ${usual}.`
    }`,
  example: 'Worked example',
  exampleOf: (name: string, by: readonly string[], told: string): string =>
    `${name} of the example records${by.length === 0 ? '' : `, by ${by.join(' and ').replaceAll('_', ' ')}`}${told}`,
  toldInExample: (told: readonly (readonly [string, string | number])[]): string =>
    told.length === 0 ? '' : `, with ${told.map(([name, value]) => `${name} ${value}`).join(' and ')}`,
  moreRows: (rows: number): string => `and ${rows} more rows, not shown here`,
  gives: 'Gives',
  given: 'Given',
  found: 'Computed',
  notReached: 'not reached',
} as const;
