import { nearestName } from '../../problem/nearest.js';
import { fieldOf } from '../../record/field.js';
import { type ColumnProfile, profilesOf, shareOf } from './column-profile.js';
import { type DraftedFile, type KnownList, listOf } from './known-list.js';
import type { ColumnProposal, FileProposal } from './proposal.js';

/** Whether most rows of a column have words, and no short codes. */
export function holdsNames(profile: ColumnProfile): boolean {
  return shareOf(profile, (text) => /\p{L}{4}/u.test(text)) >= 0.5;
}

/** More texts than this are no keys that a person would map one by one. */
const mostTexts = 200;

function mapped(proposal: ColumnProposal, { values, filled }: ColumnProfile, list: KnownList): ColumnProposal {
  const { keys, names, table, isWhole } = list;
  // A text met once among hundreds is a slip of the hand, and no key that a person should be asked about.
  const texts = values.flatMap(([text, times]) => (times * 200 < filled && !keys.has(text) ? [] : [text]));
  if (values.length > mostTexts || texts.every((text) => keys.has(text))) return proposal;
  const plain = (text: string) => text.normalize('NFKC').trim().toLowerCase();
  const keysNamed = (text: string) => {
    const byName = names.filter(({ name }) => plain(name) === plain(text)).map(({ waterbody }) => waterbody);
    return new Set([...byName, ...[...keys].filter((key) => plain(key) === plain(text))]);
  };
  const codes = new Map<string, string | null>();
  for (const text of texts) {
    const [key, ...others] = keys.has(text) ? [text] : keysNamed(text);
    codes.set(text, key === undefined || others.length > 0 ? null : key);
  }
  const open = [...codes].flatMap(([text, key]) => (key === null ? [text] : []));
  const near = open.flatMap((text) => {
    const key = nearestName(text, keys) ?? nearestName(text, new Set(names.map(({ name }) => name)));
    return key === null ? [] : [`${text} is near ${key}`];
  });
  const known = isWhole ? '' : ' Not all of the list was looked at.';
  const said = near.length === 0 ? '' : ` By spelling alone ${near.slice(0, 5).join(', ')}.`;
  const question = `Which of the ${table} do the texts without a key stand for?${said}${known} Keys: ${[...keys].slice(0, 40).join(', ')}.`;
  return {
    ...proposal,
    codes,
    sureness: open.length > 0 || proposal.sureness === 'unsure' ? 'unsure' : 'likely',
    why: `${proposal.why}; ${codes.size - open.length} of ${codes.size} are keys of the list of ${table}, or names in it`,
    questions: [...proposal.questions, ...(open.length === 0 ? [] : [question])],
  };
}

/** A column that names what no file lists: with it, its rows would be set aside. */
function listless(proposal: ColumnProposal): ColumnProposal {
  const question =
    'No file drafted here lists these wash units. Import one that does, or ignore the column with a reason: rows that name what nobody lists are set aside.';
  return { ...proposal, sureness: 'unsure', questions: [...proposal.questions, question] };
}

/**
 * Maps the texts of columns that refer to stations or wash units onto the keys that drafted lists hold, by the names there;
 * what no name says is an open question, with what is spelt alike.
 */
export function proposeKeys({ kind, proposal }: DraftedFile, lists: readonly KnownList[]): FileProposal {
  const { headings } = kind.samples[0]!;
  const profiles = profilesOf(
    headings,
    kind.samples.flatMap(({ rows }) => rows),
  );
  const columns = proposal.columns.map((column) => {
    const field = column.use.kind === 'field' ? fieldOf(proposal.table, column.use.field) : null;
    if (field?.type !== 'reference') return column;
    const list = listOf(lists, field.to);
    if (list === null && field.to === 'wash_units') return listless(column);
    const profile = profiles[headings.indexOf(column.column)]!;
    return list === null || (field.to === 'waterbodies' && holdsNames(profile))
      ? column
      : mapped(column, profile, list);
  });
  return { ...proposal, columns };
}
