/** What seasons can be compared by: a share of full inspections, and the fields whose meaning it stands on. */
export interface SeasonMeasure {
  readonly name: string;
  readonly field: string;
  /** The value that counts. */
  readonly value: string;
  /** A change of one of these fields of inspections breaks the line. */
  readonly standsOn: readonly string[];
  readonly meaning: string;
}

/** The measures by the names that a sheet's sentence gives them. */
export const seasonMeasures: readonly SeasonMeasure[] = [
  {
    name: 'interception',
    field: 'outcome',
    value: 'intercepted',
    standsOn: ['outcome', 'extent'],
    meaning: 'full inspections that ended in an interception',
  },
  {
    name: 'standing water',
    field: 'standing_water',
    value: 'yes',
    standsOn: ['standing_water', 'extent'],
    meaning: 'full inspections with standing water',
  },
  {
    name: 'vegetation',
    field: 'vegetation',
    value: 'yes',
    standsOn: ['vegetation', 'extent'],
    meaning: 'full inspections with plants',
  },
];
