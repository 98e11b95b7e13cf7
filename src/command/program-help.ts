/** What `rampbook --help` says before the commands. */
export const about = `Season records of watercraft inspection programs: from exported tables to reports that can be defended.`;

/** What it says after them, in lines of at most 80 letters. */
export const after = `
In their order, for a first season:
  rampbook draft exports/lakes --from exports --to lakes.crosswalk.yaml
  rampbook import lakes.crosswalk.yaml --from exports --store store
  rampbook report notebooks/season.md --store store --to reports
"rampbook COMMAND --help" says more of each.

Exit codes: 0 fine; 1 problems in the crosswalks, exports, store or notebooks,
each named with its place and remedy; 2 the command was used wrongly. Rows that
are set aside are an answer, not a failure: see set-aside.csv in the store.
Nothing is sent anywhere: rampbook reads and writes the folders you name, and
nothing else.`;
