import type { CodeList } from '../../record/field.js';
import { codeWords } from './code-words.js';
import type { ColumnProfile } from './column-profile.js';
import { frenchCodes } from './french-words.js';
import { wordsOf } from './heading.js';
import { partNamed } from './part-words.js';

/** What a column's texts may stand for in a code list. */
export interface CodeMatch {
  /** By text: the code, or null where a person must say. */
  readonly codes: ReadonlyMap<string, string | null>;
  /** The texts whose code was read off their letters alone. */
  readonly guessed: ReadonlySet<string>;
  /** How many texts are too rare to be codes, and are left out. */
  readonly rare: number;
  /** The share of filled rows whose text is the code itself, or a common word for it. */
  readonly plain: number;
  /** The share whose text can only be short for one code. */
  readonly short: number;
}

/** More texts than this are no codes. */
const mostTexts = 60;
/** Spaces are evened out, and what only says how loudly a word was written is left off. */
const plainText = (text: string): string =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\s+/gu, ' ')
    .trim()
    .replace(/(?<=\p{L}{2})!+$/u, '');

const joined = (text: string): string => text.replaceAll(' ', '');

function isSubsequence(short: string, long: string): boolean {
  let at = 0;
  for (const letter of long) if (letter === short[at]) at++;
  return at === short.length;
}

/** How a text may be short for a code, from 3 for its beginning down to 1; 0 where it cannot be. */
function shortness(text: string, code: string): number {
  const letters = plainText(text).replace(/[^a-z]/gu, '');
  const words = wordsOf(code);
  const whole = words.join('');
  if (letters === '' || letters.length !== plainText(text).length) return 0;
  if (letters.length === 1) return whole.startsWith(letters) ? 2 : 0;
  if (whole.startsWith(letters) || words.some((word) => letters.length > 2 && word.startsWith(letters))) return 3;
  if (
    words
      .map((word) => word[0])
      .join('')
      .startsWith(letters)
  )
    return 2;
  return whole[0] === letters[0] && isSubsequence(letters, whole) ? 1 : 0;
}

function saidPlainly(text: string, list: CodeList): string | null {
  const said = plainText(text);
  for (const { code } of list.codes) {
    const words = [codeWords, frenchCodes].flatMap((lists) => lists[list.name]?.[code]?.split(', ') ?? []);
    if ([code, ...words].some((word) => joined(plainText(word)) === joined(said))) return code;
  }
  if (list.name !== 'component') return null;
  const part = partNamed(text);
  return part !== null && part.likeness >= 0.75 ? part.component : null;
}

function onlyShortFor(text: string, list: CodeList, taken: ReadonlySet<string>): string | null {
  const rated = list.codes
    .filter(({ code }) => !taken.has(code))
    .map(({ code }) => ({ code, rate: shortness(text, code) }))
    .filter(({ rate }) => rate > 0)
    .sort((a, b) => b.rate - a.rate);
  return rated.length > 0 && rated[0]!.rate > (rated[1]?.rate ?? 0) ? rated[0]!.code : null;
}

const yes = ['y', 'yes', 't', 'true', 'x'];
const no = ['n', 'no', 'f', 'false'];

/**
 * What yes or no says of a part, by the heading that it answers: under `fouled` what was found, under `checked` only that a
 * part was not looked at, and otherwise nothing that could be told. Undefined where the text is neither.
 */
function answerOn(heading: string, text: string): string | null | undefined {
  const [isYes, isNo] = [yes.includes(plainText(text)), no.includes(plainText(text))];
  if (!isYes && !isNo) return undefined;
  const words = wordsOf(heading);
  const isAsked = (stems: readonly string[]) => words.some((word) => stems.some((stem) => word.startsWith(stem)));
  if (isAsked(['foul', 'mussel', 'found', 'positive', 'infest', 'contaminat'])) return isYes ? 'fouled' : 'clean';
  return isNo && isAsked(['check', 'inspect', 'look', 'examin', 'seen']) ? 'not checked' : null;
}

/** What the texts of a column may stand for; null where they are too many for codes. */
export function matchCodes({ heading, values, filled }: ColumnProfile, list: CodeList): CodeMatch | null {
  if (values.length === 0 || values.length > Math.max(mostTexts, list.codes.length * 2)) return null;
  const codes = new Map<string, string | null>();
  const taken = new Set<string>();
  const guessed = new Set<string>();
  let plain = 0;
  let short = 0;
  for (const [text, times] of values) {
    const answer = list.name === 'check state' ? answerOn(heading, text) : undefined;
    if (answer === null) codes.set(text, null);
    const code = answer === undefined ? saidPlainly(text, list) : answer;
    if (code === null) continue;
    codes.set(text, code);
    taken.add(code);
    plain += times;
  }
  let rare = 0;
  for (const [text, times] of values) {
    if (codes.has(text)) continue;
    // A text met once among hundreds is a slip of the hand, and no code that a person should be asked about.
    if (times * 200 < filled) {
      rare++;
      continue;
    }
    const code = onlyShortFor(text, list, taken);
    codes.set(text, code);
    if (code === null) continue;
    taken.add(code);
    guessed.add(text);
    short += times;
  }
  return { codes, guessed, rare, plain: plain / Math.max(1, filled), short: short / Math.max(1, filled) };
}
