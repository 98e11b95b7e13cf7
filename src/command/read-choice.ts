import type { Choice } from '../finding/book/restricted-book.js';
import { nearestName } from '../problem/nearest.js';
import { type Problem, wholeFile } from '../problem/problem.js';
import type { Book, BookTable } from '../record/book.js';
import type { WrittenChoice } from '../report/choice/choice-address.js';
import { choiceSaid } from '../report/choice/choice-said.js';
import { choiceOf, filterOffers, type OfferedValue } from '../report/choice/filter-offers.js';

/** The words by which a command is told what to count: `FIELD=VALUE` and `INPUT=VALUE`, each any number of times. */
export interface ChoiceWords {
  readonly only?: readonly string[];
  readonly with?: readonly string[];
}

/** What a command counts, and the sentences that say so; none where nothing was chosen. */
export interface CommandChoice {
  readonly only: Choice;
  readonly inputs: ReadonlyMap<string, string>;
  readonly said: (
    notebookInputs: ReadonlyMap<string, string>,
    tablesAsked: readonly BookTable[],
  ) => readonly string[] | null;
}

/** A word behind an option that may be given several times, added to those before it. */
export function addWord(word: string, others: readonly string[] = []): readonly string[] {
  return [...others, word];
}

/** Reads what to count; fields and values that the records do not have are problems. */
export function readChoice(
  { only = [], with: given = [] }: ChoiceWords,
  book: Book,
): CommandChoice | { readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const fields = pairsOf('--only', only, problems);
  const inputs = pairsOf('--with', given, problems);
  const offers = filterOffers(book, [...fields.keys()]);
  const written = new Map<string, string>();
  for (const [field, text] of fields) {
    const offer = offers.find((one) => one.field === field);
    if (offer === undefined) {
      const known = [...book.tables.values()].flatMap((table) => [...table.fields.keys()]);
      problems.push(unknown('--only', field, 'a field of the records', nearestName(field, known)));
      continue;
    }
    const isMeant = ({ value, label }: OfferedValue) =>
      [value, label].some((name) => name.toLowerCase() === text.toLowerCase());
    // Keys may differ in their case alone, so that one written as it stands comes first.
    const found = offer.values.find(({ value }) => value === text) ?? offer.values.find(isMeant);
    if (found === undefined) {
      const nearest = nearestName(
        text,
        offer.values.map(({ value }) => value),
      );
      problems.push(unknown('--only', text, `a value of ${field}`, nearest));
    } else written.set(field, found.value);
  }
  if (problems.length > 0) return { problems };
  const choice: WrittenChoice = { only: written, inputs };
  return {
    only: choiceOf(offers, book, written),
    inputs,
    said: (notebookInputs, tables) => {
      if (written.size + inputs.size === 0) return null;
      return choiceSaid(choice, { offers, inputs: notebookInputs, tables, whole: [] });
    },
  };
}

function pairsOf(option: string, words: readonly string[], problems: Problem[]): Map<string, string> {
  const pairs = new Map<string, string>();
  for (const word of words) {
    const at = word.indexOf('=');
    if (at > 0) pairs.set(word.slice(0, at), word.slice(at + 1));
    else problems.push(unknown(option, word, 'NAME=VALUE', null));
  }
  return pairs;
}

function unknown(option: string, seen: string, wanted: string, nearest: string | null): Problem {
  const remedy = nearest === null ? `Correct what stands behind ${option}.` : `Did you mean "${nearest}"?`;
  return {
    code: 'unknown-choice',
    severity: 'stops',
    place: wholeFile(option),
    seen,
    wanted,
    remedy,
  };
}
