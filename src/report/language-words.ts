import type { Takes } from '../formula/functions/declaration.js';
import type { BookField } from '../record/book.js';

/** The fixed words of the reference of the formula language. */
export const languageWords = {
  title: 'The language of formulas',
  about:
    'Figures, selections and the columns of sheets are made by formulas. This page is made from the declarations that check and evaluate them, so that what it says is what happens.',
  takes: 'Takes',
  gives: 'Gives',
  example: 'Example',
  counted: 'things that are counted',
  fieldKind: {
    text: 'a text',
    number: 'a number',
    date: 'a date',
    instant: 'a moment',
    wait: 'a wait in minutes, which may be open',
  } satisfies Readonly<Record<BookField['kind'], string>>,
  shownAs: 'A value is shown as one of: ',
  taking: {
    rows: 'rows; in a sheet the group’s own where they are left out',
    'number field': 'a number of each row, then `of` and the rows',
    'number or wait field': 'a number or a wait of each row, then `of` and the rows',
    'wait field': 'a wait of each row, then `of` and the rows',
    'date field': 'a date of each row, then `of` and the rows',
    'any field': 'a field of each row, then `of` and the rows',
    'sheet column': 'a column of the sheet that the formula stands in, then `of` and its name',
    'sheet key': 'none, or keys of the sheet that the formula stands in',
    number: 'a number',
    truth: 'a condition',
    text: 'a text',
    date: 'a date, or one written as "2025-05-01"',
    value: 'a number, a text or a date',
  } satisfies Readonly<Record<Takes, string>>,
} as const;

interface Bounds {
  readonly characters: number;
  readonly depth: number;
}

/** What the reference says in sentences, section by section; code stands between backquotes. */
export const languageRules = {
  writing: ({ characters, depth }: Bounds): readonly string[] => [
    'Words, not signs, stand for logic: `is`, `is not`, `in`, `not in`, `between`, `and`, `or`, `not`, `where`.',
    'Numbers are written without thousands separators and without units: `1000`. A number written out takes the unit of what it is compared or chosen with.',
    'Texts stand in double quotes: `"intercepted"`. A date is a text of year, month and day: `"2025-05-01"`.',
    `A formula has at most ${characters} characters, and brackets, calls and signs nest at most ${depth} deep. A longer one becomes two figures.`,
    'Every mistake is told at its line and column, all of them at once, and the rest of the page still stands.',
  ],
  names: [
    'Behind `where`, and before `of`, a name is first of all a field of the rows. Everywhere else it is an input, a figure, a selection, a sheet or, in a sheet, a column or key of it; last of all a table of records.',
    'The order on the page is free: whatever is needed is computed first. Names that need one another in a circle are told with the whole circle.',
    'A name that is not known is told with the nearest one that is.',
  ],
  tables: [
    'Formulas ask these tables for these fields. Some are recorded, others follow from them; where no export gave a field, it is missing in every row.',
    'A text field that lists values holds one of them or is missing. A station, water, unit or form is written as the exports write its key.',
  ],
  declared: [
    '`Sheet by_station "Interceptions by station": each station, season of full, highest inspected first, at most 10.` makes a row for each station and season among the rows named. The title in quotes, the order and its limit may be left out; `lowest` turns the order, and the column is one of the sheet’s.',
    'Right below such a sentence stands the table of its columns, with the heads `column`, `formula` and `shown as`.',
    '`Sheet sites: fouling sites of checks where season is this_season, by watercraft_type, with target release_target.` is filled by a finding of the methods page, which names what may stand behind `by` and `with`.',
    'Figures stand in a table with the heads `figure`, `formula`, `shown as`; inputs under `input`, `value`, `unit`, `source`; selections under `selection` and `rows`. A value in prose stands in braces.',
    'A chart is an image whose address names its kind, its sheet and the columns drawn: `![Interceptions by station](dots?sheet=by_station&value=interception)`.',
  ],
  rows: [
    '`inspections where extent is "full"` are rows of a table for which the condition is true. A selection gives such rows a name, and can be narrowed in its turn.',
    '`sum(staff_hours of station_days)` takes a field of each row. What is taken may be a calculation: `mean((finished_at - started_at) of inspections)`.',
    'In a sheet the rows may be left out: `count()` and `count(where outcome is "intercepted")` are of the row’s own group. `station_days here` are the rows of another table that agree with the group in all keys.',
  ],
  sheets: [
    '`interception of by_station for station` is what the column holds in the row of that key; `for ("heron-point", 2025)` names the keys of a sheet that has several.',
    '`sum(inspected of by_station)` is over all rows of the sheet, those not shown too; `where` and `here` narrow them. `count`, `sum`, `mean`, `median`, `quantile`, `lowest` and `highest` work so.',
    'A column may ask about the other rows of its own sheet by the sheet’s name: `share(inspected, sum(inspected of by_station))`, `rank_from_highest(interception of by_station)`, `running_sum(inspected of by_station)`.',
    'A value that is looked up keeps its interval and moves with the records under it; a finding’s number keeps its interval, but what is made of it has none.',
  ],
  inputs: [
    '`interception with this_season as last_season` is the figure as it would be if the input had that value: all that the input reaches is made again, over the same records and resamples. Several inputs stand one behind the other.',
    'A sheet `Sheet swings: sensitivity of advantage, with threshold 0.` moves every input that has a plausible range, under the heads `low` and `high` of its table, from end to end, alone; all that it reaches is made again, findings too. It says which inputs bring the figure to the other side of the threshold, and at which value. The threshold stands in the figure’s own unit, not as it is shown: 0.05 where the figure is shown as 5 percent.',
    'Only a figure can be asked so, and only one that stands neither on a sheet that the input reaches nor on a figure that itself is asked with other inputs.',
  ],
  values: [
    'A value is a number with its unit, a text, a date, or true or false. Only alike values are compared, calculated with or chosen among.',
    'Two dates are subtracted, which gives days; a number of days, or a time, is added to a date or taken away. Two moments of a row subtracted give minutes.',
    'An input whose unit is `list`, or `list of minutes`, holds several values with commas between. It stands after `in`: `month in early_months`.',
    'An interval is never carried through a text or a date: what is made of one says that it has none.',
  ],
  units: [
    'Every number has a unit or is plain. Adding, comparing or choosing among things of different kinds is a problem at that place; dividing them gives a unit of its own, such as dollars an inspection.',
    'Units of one kind convert exactly (NIST Special Publication 811). A person’s hour is kept apart from an hour by the clock: they are never added, but a wage by the hour pays either.',
    'A temperature on a scale has no true zero: temperatures are compared and subtracted, never added or multiplied.',
    'The unit of an input is made of these words: `minutes`, `dollars an hour`, `staff hours`, `inspections`; `percent`, `per 1,000`, `year` and nothing are plain numbers.',
  ],
} as const;
