import { labelOf } from '../../notebook/key-cell.js';
import type { BookTable } from '../../record/book.js';
import type { WrittenChoice } from './choice-address.js';
import { choiceWords } from './choice-words.js';
import type { FilterOffer } from './filter-offers.js';

/** What a page knows of a choice when it says which one it shows. */
export interface ChoiceGround {
  readonly offers: readonly FilterOffer[];
  /** The inputs as the notebook has them, by name. */
  readonly inputs: ReadonlyMap<string, string>;
  /** The tables that the notebook asks. */
  readonly tables: readonly BookTable[];
  /** The names that show all records whatever is chosen. */
  readonly whole: readonly string[];
}

/** Which choice a page shows, as sentences: what was chosen, and what of the page it does not reach. */
export function choiceSaid({ only, inputs }: WrittenChoice, ground: ChoiceGround): readonly string[] {
  const chosen = ground.offers.filter(({ field }) => only.has(field));
  const parts = [
    ...chosen.map(({ field, label, values }) => {
      const value = only.get(field)!;
      return choiceWords.field(label, values.find((offered) => offered.value === value)?.label ?? value);
    }),
    ...[...inputs].map(([name, value]) => choiceWords.input(name, value, ground.inputs.get(name) ?? '')),
  ];
  if (parts.length === 0) return [choiceWords.shownAll];
  return [choiceWords.shown(parts), ...notNarrowed(chosen, ground), ...wholeNames(chosen, ground)];
}

/** A sentence for each set of fields that some of the tables do not have. */
function notNarrowed(chosen: readonly FilterOffer[], { tables }: ChoiceGround): string[] {
  const byFields = new Map<string, string[]>();
  for (const table of tables) {
    const lacking = chosen.filter(({ field }) => !table.fields.has(field)).map(({ label }) => label);
    if (lacking.length === 0) continue;
    const fields = lacking.join(', ');
    byFields.set(fields, [...(byFields.get(fields) ?? []), labelOf(table.name)]);
  }
  return [...byFields].map(([fields, names]) => choiceWords.notNarrowed(names.join(', '), fields));
}

function wholeNames(chosen: readonly FilterOffer[], { whole }: ChoiceGround): string[] {
  return chosen.length === 0 || whole.length === 0 ? [] : [choiceWords.wholeNames(whole.map(labelOf).join(', '))];
}
