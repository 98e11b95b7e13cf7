/** What every reader of these numbers must know; each stands on every page. */
export const standingNotes: readonly string[] = [
  'Findings are what inspectors detected. They are not the share of craft that carried something: a look can miss.',
  'A part that was not checked is not counted as clean, and a part that a craft does not have is not counted at all.',
  'A day on which a station was closed is not a day with zero craft; a day nobody recorded is neither.',
  'Paper checks, where nobody looked at the craft, never stand in the denominator of a rate of findings.',
  'A wash still held when the records end is an unfinished time, not a short one.',
  'Counts are everything that was recorded. An interval says how far a share or rate could differ by chance if the same season were run again; it does not cover mistakes in recording.',
  'Where no case was seen, the upper limit says how large the rate could still be. None seen is not none there.',
  'Numbers are rounded only where they are shown; downloads hold them unrounded.',
];

/** The cautions that stand wherever washes may be spoken of. */
export const washCautions: readonly string[] = [
  'This page records what was done. It does not instruct: it never says how hot, how long or with what to wash.',
  'Scalding: water hot enough to kill mussels burns skin within seconds.',
  'Pressure: a high-pressure stream can pierce skin; such a wound is a medical emergency even when it looks small.',
  'Chemicals and damage: some agents are regulated, harm people or fish, or damage hulls, seals, engines and upholstery.',
  'Effluent: wash water and what it carries may need to be contained, and its discharge may need a permit.',
  'Defer to local code, permits, the maker’s instructions and licensed practice.',
];
