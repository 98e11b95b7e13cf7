import type { Problem } from '../problem/problem.js';
import { type Mistake, type PlacedText, problemAt, type Span } from './place.js';

/** A piece of a formula that has a meaning of its own. */
export interface Token extends Span {
  readonly kind: 'number' | 'text' | 'word' | 'symbol' | 'end';
  /** The text between the quotes, the word, the symbol in its plain form (`*` for `×`), or the digits. */
  readonly text: string;
}

const space = /\s+/y;
const word = /[\p{L}_][\p{L}\p{N}_]*/uy;
const number = /\d+(?:\.\d+)?/y;
const grouped = /\d{1,3}(?:,\d{3})+(?!\d)/y;
const text = /"(?:[^"]|"")*"|“[^”]*”/y;
const symbol = /<=|>=|≤|≥|[-+*/×÷−<>(),]/y;
const anyCharacter = /\P{Cn}|\p{Cn}/uy;

const plainForm: Readonly<Record<string, string>> = { '×': '*', '÷': '/', '−': '-', '≤': '<=', '≥': '>=' };

const afterNumber = /[%.\p{L}]+[\p{L}\p{N}.+-]*/uy;

/** What to say of a character that no formula has. */
function strangeCharacter(character: string): Mistake {
  const code = 'unexpected-character';
  const wanted = 'a word, a number, a text in double quotes or an operator';
  if (character === '"' || character === '“') {
    return { code: 'unfinished-text', wanted: 'a closing quote', remedy: 'Close the text with a double quote.' };
  }
  if (character === "'" || character === '‘') {
    return { code, wanted, remedy: 'Put texts in double quotes.' };
  }
  if (character === '=') return { code, wanted, remedy: 'Write `is` to compare; a formula needs no sign in front.' };
  if (character === '!') return { code, wanted, remedy: 'Write `is not` or `not`.' };
  if (character === '|' || character === '&') return { code, wanted, remedy: 'Write `or` and `and`.' };
  if (character === '.') return { code, wanted, remedy: 'Write a digit before the point: 0.5.' };
  return { code, wanted, remedy: 'Take it out; names are made of letters, digits and underscores.' };
}

function strangeNumber(tail: string): Mistake {
  const remedy = tail.startsWith('%')
    ? 'Write 0.05 for five in a hundred, or make it an input with the unit percent.'
    : 'Units do not stand in formulas: make it an input with a unit, or put a space before the next word.';
  return { code: 'not-a-number', wanted: 'digits with at most one decimal point', remedy };
}

const hugeNumber: Mistake = {
  code: 'not-a-number',
  wanted: 'a number of at most 308 digits',
  remedy: 'Write it in a larger unit.',
};

const groupedDigits: Mistake = {
  code: 'not-a-number',
  wanted: 'a number without thousands separators, because a comma separates arguments',
  remedy: 'Write 1000 for a thousand; between two arguments put a space after the comma.',
};

/** The tokens of a formula, always with an `end` last, and a problem for every stretch that is none. */
export function tokensOf(placed: PlacedText): {
  readonly tokens: readonly Token[];
  readonly problems: readonly Problem[];
} {
  const source = placed.text;
  const tokens: Token[] = [];
  const problems: Problem[] = [];
  let offset = 0;
  const match = (pattern: RegExp): string | null => {
    pattern.lastIndex = offset;
    return pattern.exec(source)?.[0] ?? null;
  };
  const push = (kind: Token['kind'], seen: string, meant = seen): void => {
    tokens.push({ kind, text: meant, offset, end: offset + seen.length });
    offset += seen.length;
  };
  const refuse = (seen: string, mistake: Mistake): void => {
    problems.push(problemAt(placed, { offset, end: offset + seen.length }, mistake));
  };
  while (offset < source.length) {
    const blank = match(space);
    if (blank !== null) {
      offset += blank.length;
      continue;
    }
    const found = match(word);
    if (found !== null) {
      push('word', found);
      continue;
    }
    const digits = match(number);
    if (digits !== null) {
      const groups = match(grouped);
      if (groups !== null) refuse(groups, groupedDigits);
      else if (!Number.isFinite(Number(digits))) refuse(digits, hugeNumber);
      const whole = groups ?? digits;
      const start = offset;
      push('number', whole, groups === null ? digits : groups.replaceAll(',', ''));
      const tail = match(afterNumber);
      if (tail !== null) {
        problems.push(problemAt(placed, { offset: start, end: offset + tail.length }, strangeNumber(tail)));
        offset += tail.length;
      }
      continue;
    }
    const quoted = match(text);
    if (quoted !== null) {
      push('text', quoted, quoted.slice(1, -1).replaceAll('""', '"'));
      continue;
    }
    const sign = match(symbol);
    if (sign !== null) {
      push('symbol', sign, plainForm[sign] ?? sign);
      continue;
    }
    const strange = match(anyCharacter)!;
    const mistake = strangeCharacter(strange);
    refuse(strange, mistake);
    offset = mistake.code === 'unfinished-text' ? source.length : offset + strange.length;
  }
  tokens.push({ kind: 'end', text: '', offset: source.length, end: source.length });
  return { tokens, problems };
}
