/** A term of the trade or of statistics, as every page means it. */
export interface Term {
  readonly name: string;
  /** What it is called in a page's text, in small letters; its name and plural need not be repeated. */
  readonly forms: readonly string[];
  readonly meaning: string;
  /** Where that meaning comes from, and how far it was checked. */
  readonly source: string;
}

const common = 'Common practice, no source.';
const own = 'As this program uses the word; common practice, no source.';

const term = (name: string, forms: readonly string[], meaning: string, source: string): Term => ({
  name,
  forms,
  meaning,
  source,
});

/** Every term that pages explain, in alphabetical order: defined here once. */
export const terms: readonly Term[] = [
  term(
    'blind recheck',
    ['recheck', 'second look', 'relook'],
    'A second look at the same craft by another inspector who had not seen the first result.',
    'Quality-assurance observations beside entrance inspections: training curriculum, Western Regional Panel, chapter 4 (contents seen); blinding: common practice.',
  ),
  term(
    'bypass',
    ['drove by', 'drive-by', 'compliance'],
    'A craft that was seen to pass an open station without stopping. Known only where somebody counted them.',
    common,
  ),
  term(
    'censored',
    ['still held', 'unfinished', 'open at the cut-off'],
    'Of a wait not seen to end when the records end: it counts as “at least so long”, never as a short one, and never as none.',
    'Kaplan and Meier 1958, JASA 53:457-481.',
  ),
  term(
    'decontamination',
    ['wash', 'washed', 'washing'],
    'The removal or killing of what a craft carries, mostly with hot water; a wash for short. What was done is recorded here; how to do it is not told.',
    'Uniform Minimum Protocols and Standards for watercraft inspection and decontamination programs, Pacific States Marine Fisheries Commission 2016 (title and contents seen).',
  ),
  term(
    'established',
    [],
    'Of an interception: attached mussels, more than a trace of them, on some part. Less than that may be a single shell or loose grit.',
    common,
  ),
  term(
    'fouled',
    ['fouling'],
    'Found with mussels on it. Plants, mud and suspected grit are recorded beside it and are no mussels.',
    common,
  ),
  term('fouling site', [], 'A part of a craft, its trailer or its equipment on which mussels were found.', common),
  term(
    'full inspection',
    ['inspected', 'looked over'],
    'A look at the craft itself, part by part. A paper check is none, and stands in no rate of findings.',
    own,
  ),
  term(
    'hidden part',
    ['hidden'],
    'A part that cannot be looked at from where an inspector stands: it takes a mirror, a light, fingertips, or lying down.',
    common,
  ),
  term(
    'interception',
    ['intercepted', 'per 1,000 full inspections'],
    'An inspection that ended so because mussels were found on the craft, trailer or equipment, or in its water. It is what was detected, never how many craft carried mussels.',
    'Seen in season reports of many programs, each with its own rule; the depth of an interception: common practice, no source.',
  ),
  term(
    'interval',
    ['95 %'],
    'From where to where a share, rate or time could lie by chance if the same season were run again: made so that 95 of 100 such intervals hold the truth. Mistakes in recording are not in it.',
    'Neyman 1937, Philosophical Transactions of the Royal Society A 236:333-380 (from memory); each interval’s own method stands with its mark.',
  ),
  term(
    'look',
    ['looked at', 'looks'],
    'One part of one craft, looked at in one inspection. A part that a craft does not have gets none, and neither does one that was not checked.',
    own,
  ),
  term(
    'not checked',
    ['skipped'],
    'Of a part that the craft has and nobody looked at. It is not clean: it is unknown, and its share stands beside every finding.',
    own,
  ),
  term(
    'paper check',
    [],
    'A look at a receipt, seal or certificate of an earlier inspection, and not at the craft.',
    'Express and passport checks counted apart in programs’ reports (seen second-hand); the name: common practice.',
  ),
  term(
    'positive water',
    ['status of its last water', 'positive lake', 'water status', 'last water'],
    'A water in which mussels were confirmed by the day of the inspection; suspect and negative are statuses of their own, and not tested is none of these.',
    'Classification of waters: Model Regulation for State Watercraft Inspection and Decontamination Programs, National Sea Grant Law Center 2016 (contents seen).',
  ),
  term(
    'resampling',
    ['resampled', 'resamples'],
    'Drawing station-days again and again from those recorded, and computing the figure anew each time, to see how far it moves.',
    'Efron and Tibshirani 1993, An Introduction to the Bootstrap (from memory).',
  ),
  term(
    'set aside',
    [],
    'Of a row that could not be taken as it stands: it is kept with its file, line, text and reason, and counted in every report.',
    own,
  ),
  term(
    'shadow price',
    [],
    'What one further staff hour would bring if the plan were drawn up again with it: interceptions an hour at the plan’s edge, not on average.',
    'Dantzig 1963, Linear Programming and Extensions (from memory).',
  ),
  term(
    'sole site',
    ['only site', 'only fouled site'],
    'A fouled part that was the only one on its craft: a crew that skips it lets the whole craft pass.',
    common,
  ),
  term(
    'standardised rate',
    ['standardised', 'standardized'],
    'The rate that a station would have had with the season’s own mix of traffic; it compares stations that see different craft.',
    'Fay and Feuer 1997, Statistics in Medicine 16:791-801.',
  ),
  term(
    'standing water',
    [],
    'Water left in a craft or its equipment. Young mussels in it cannot be seen, so such a craft is judged by where it has been.',
    'Inspection procedures of western programs (seen); invisibility of veligers: common practice.',
  ),
  term(
    'station-day',
    ['station days', 'cluster', 'clusters'],
    'One station on one date. Craft that come on one day are alike, so days, not craft, are taken as independent. Closed and not recorded days are told apart from days with no craft.',
    'Korn and Graubard 1998, Survey Methodology 24:193-201.',
  ),
  term('turnaround', [], 'The time from the order of a wash to the craft’s release, in elapsed minutes.', common),
  term(
    'withheld',
    [],
    'Of a number that is known and not shown, since it stands on so few that it could tell of one person or would mislead. It is neither zero nor missing.',
    own,
  ),
];
