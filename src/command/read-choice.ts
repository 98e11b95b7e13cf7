import type { Choice } from '../finding/book/restricted-book.js';
import { nearestName } from '../problem/nearest.js';
import { type Problem, wholeFile } from '../problem/problem.js';
import type { Book, BookTable } from '../record/book.js';
import { choiceSaid } from '../report/choice/choice-said.js';
import { choiceOf, filterOffers, type OfferedValue } from '../report/choice/filter-offers.js';

/** The words by which a command is told what to count: `FIELD=VALUE` and `INPUT=VALUE`, each any number of times. */
export interface ChoiceWords {
  readonly only?: readonly string[];
  readonly with?: readonly string[];
}

/** What a command counts, and the sentences that say so of a notebook; none where nothing was chosen that reaches it. */
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
      problems.push(unknown('--only', text, `a value of ${field}`, nearest, offer.values));
    } else written.set(field, found.value);
  }
  if (problems.length > 0) return { problems };
  return {
    only: choiceOf(offers, written),
    inputs,
    said: (notebookInputs, tables) => {
      const reaching = new Map([...inputs].filter(([name]) => notebookInputs.has(name)));
      if (written.size + reaching.size === 0) return null;
      return choiceSaid({ only: written, inputs: reaching }, { offers, inputs: notebookInputs, tables, whole: [] });
    },
  };
}

/** A problem for each input that was chosen and is none of those that there are in a notebook, or in several. */
export function unknownInputs(
  { inputs }: Pick<CommandChoice, 'inputs'>,
  place: string,
  known: Iterable<string>,
): readonly Problem[] {
  const names = [...known];
  return [...inputs.keys()]
    .filter((name) => !names.includes(name))
    .map((seen): Problem => {
      const nearest = nearestName(seen, names);
      const all = names.length === 0 ? 'The notebook has no inputs.' : `Inputs are ${names.join(', ')}.`;
      const remedy = nearest === null ? all : `Did you mean "${nearest}"?`;
      const wanted = 'an input of this notebook behind --with';
      return { code: 'unknown-choice', severity: 'stops', place: wholeFile(place), seen, wanted, remedy };
    });
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

/** So many values are named where none is near; more would bury the message. */
const mostNamed = 20;

function unknown(
  option: string,
  seen: string,
  wanted: string,
  nearest: string | null,
  values: readonly OfferedValue[] = [],
): Problem {
  const named = values.slice(0, mostNamed).map(({ value }) => value);
  const more = values.length > named.length ? ` and ${values.length - named.length} more` : '';
  const known = named.length === 0 ? '' : ` Known: ${named.join(', ')}${more}.`;
  const remedy = nearest === null ? `Correct what stands behind ${option}.${known}` : `Did you mean "${nearest}"?`;
  return {
    code: 'unknown-choice',
    severity: 'stops',
    place: wholeFile(option),
    seen,
    wanted,
    remedy,
  };
}
