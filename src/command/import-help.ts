import { InvalidArgumentError } from 'commander';

/** Adds a season that was given on the command line to those before it. */
export function addSeason(text: string, others: readonly number[] = []): readonly number[] {
  if (!/^\d{4}$/.test(text)) throw new InvalidArgumentError('A season is a year of four digits, such as 2024.');
  return [...others, Number(text)];
}

/** What `rampbook import --help` says below its options. */
export const importHelp = `
Mending what was set aside: copy set-aside.csv out of the store, add a column
"mended" and write there what should stand in the cell that each line names
((empty) for nothing); or copy set-aside-rows.csv and correct the rows
themselves. Then give the copy with --mended. A mended row keeps its file and
line, is checked like any other, and is counted as mended; rows that were set
aside only because it was follow it. Private cells stay "withheld" and are taken
from the export by their place; no private text is ever taken from a correction.
A private cell that is itself at fault is left out with (empty), or corrected in
the export, as is a row that is withheld as a whole; the export's new version
then replaces the old one. Mended rows are remembered in the store for as long
as their file stays the same. Cells that begin as a formula does have an
apostrophe put before them in both ledgers, so that no spreadsheet runs them; it
is taken off again when they are read.

A season is withdrawn with --withdraw YEAR: the files whose rows all belong to
it are left out of the store, this time and from now on, and every account says
so; --call-back YEAR reads them again. Places, equipment and money belong to no
season.

One import writes to a store at a time. An import that was stopped, by whatever,
leaves the store from before or the new one, never a mixture, and the next
command says which.

Examples:
  rampbook import lakes.crosswalk.yaml roads.crosswalk.yaml
    --from exports --store store
  rampbook import lakes.crosswalk.yaml --from exports --store store
    --mended corrected.csv`;
