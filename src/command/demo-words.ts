/** What a notebook that ships says of the demo alone, and what stands in its place where it is to be somebody's own. */
interface DemoWords {
  readonly said: string;
  readonly own: string;
}

const shownSince = ' (fouled craft since 2023, most of them leaving the positive lake)';

/**
 * By notebook, what is true of the demo and of no other program: its name, its waters, and what an analyst concluded from its
 * records. Each stands there word for word, line ends too, so that a notebook that changes has to be looked at here.
 */
export const demoWords: Readonly<Record<string, readonly DemoWords[]>> = {
  'season.md': [
    { said: 'the ramps, roadsides and borders of the Quillwater Basin', own: 'the ramps, roadsides and borders' },
    { said: "leaving the basin's one positive lake are another", own: 'leaving a water are another' },
    { said: "around the basin's rate", own: 'around the rate of all' },
    {
      said: 'Only\ncraft arriving are in it, since the launch at the positive lake inspects craft leaving.',
      own: 'Craft\nleaving a water are not in it.',
    },
    { said: ': a border station meets craft that a small lake never sees. Beside', own: '. Beside' },
    { said: 'Early months are thin and rich: few craft move, and more of them come from afar.\n\n', own: '' },
    {
      said: 'The recorded meaning of standing water changed in 2025, so its share cannot be compared across that line. Interceptions\nare: the outcome means the same in all three seasons.',
      own: 'Seasons can be compared only where a code meant the same in each. What changed is declared in the crosswalk, and stands\nunder “Definitions that changed between seasons”.',
    },
    { said: '; the definition changed in 2025](lines', own: '](lines' },
    { said: '&x=season&breaks=2025)', own: '&x=season)' },
    { said: "stations' own target, from order to release", own: 'an example: put your stations’ own target here' },
  ],
  'season-public.md': [
    { said: "takes a boat to the basin's waters", own: 'takes a boat to these waters' },
    { said: 'roadsides and borders of the Quillwater Basin looked', own: 'roadsides and borders looked' },
  ],
  'training-focus.md': [
    {
      said: 'leaving the one positive lake, many after weeks at a\nmooring. What is said here is how mussels sit on craft like those. Craft arriving from afar may carry them elsewhere, and there\nare too few of them to say. All of it',
      own: 'leaving a water; craft that\narrive from elsewhere may carry mussels on other parts. All of it',
    },
    {
      said: 'Hidden parts are skipped far more often than plain ones, as the\ntable below says, and some of them are often fouled when somebody looks: these stand in the upper right, filled and named, and **these are the\nparts to stress**.',
      own: 'The table below says how often hidden parts are.\nParts that are often skipped and often fouled when somebody looks stand in the upper right, filled and named: **these are the\nparts to stress**.',
    },
    ...['by_build&part=component&craft=', 'by_type&part=component&craft='].map((address) => ({
      said: `${shownSince}](handout?sheet=${address}`,
      own: `](handout?sheet=${address}`,
    })),
  ],
  'budget-request.md': [
    { said: ' No further wash unit is asked for: the replay below says why.', own: '' },
    { said: ' (invented, as the basin is)', own: '' },
    {
      said: '\nIt would have to last {portable_life} to break even at all. A fixed unit would cost {fixed_a_year} a year and saves no more.\n',
      own: '\nA fixed unit would cost {fixed_a_year} a year.\n',
    },
    {
      said: 'Whether the portable unit pays turns on nearly everything that is assumed, as the next section shows;\nthat is why it is not asked for.',
      own: 'How much this leans on what is assumed stands further down.',
    },
    { said: '\nThe curve bends: hours beyond what two busy stations can take buy next to nothing.\n', own: '\n' },
    { said: 'stations’ own target, from order to release', own: 'an example: put your stations’ own target here' },
  ],
  'board-brief.md': [
    { said: 'Quillwater Basin, season {this_season}.', own: 'Season {this_season}.' },
    {
      said: 'Where the curve turns\nflat the busiest stations can take no more, {station_most} each, and elsewhere few craft carry mussels.',
      own: 'No station\ntakes more than {station_most}.',
    },
    {
      said: '**Not asked for.** A further wash unit: at {unit_station}, where it saves most, it would save {saved_a_wash} a wash on average; half of the craft\nthere wait longer than {recorded_wait}, and most of that is not for want of a unit.',
      own: '**A further wash unit.** At {unit_station} it would save {saved_a_wash} a wash on average; half of the craft\nthere wait longer than {recorded_wait}.',
    },
  ],
};

/** Inputs whose values were decided for the demo, with what each asks of whoever takes a notebook over. */
export const demoInputs: Readonly<Record<string, string>> = {
  wage: 'to be filled in: staff cost by staff hours, with benefits',
  reached: 'to be filled in: share of passing craft that crews of today reach',
  unit_station: 'to be filled in: a station as the records name it',
  planned_personnel: 'to be filled in: the adopted budget',
  planned_travel: 'to be filled in: the adopted budget',
  planned_equipment: 'to be filled in: the adopted budget',
  planned_supplies: 'to be filled in: the adopted budget',
  planned_contracts: 'to be filled in: the adopted budget',
  planned_training: 'to be filled in: the adopted budget',
  planned_indirect: 'to be filled in: the adopted budget',
};
