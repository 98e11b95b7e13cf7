import type { Problem } from '../problem/problem.js';
import { type Mistake, type PlacedText, problemAt, type Span } from './place.js';
import { type Token, tokensOf } from './token.js';
import type { AmongNode, ArithmeticOperator, InputChange, NameNode, Node, RowsNode } from './tree.js';

/** The most characters a formula may have, and how deep parentheses, calls and signs may nest. */
export const formulaBounds = { characters: 2000, depth: 60 } as const;

const joining = new Set([
  ...['or', 'and', 'not', 'is', 'in', 'between', 'of', 'where', 'here', 'missing'],
  ...['for', 'with', 'as'],
]);
const orders = new Set(['<', '<=', '>', '>=']);
const written = { number: 'a number', text: 'a text', word: 'a name', symbol: 'a sign', end: 'the end' } as const;

/** Whether a word belongs to the language itself, and so can name nothing. */
export function isLanguageWord(word: string): boolean {
  return joining.has(word);
}

/**
 * Reads one formula's tokens by descent, one method a rule of the grammar. A mistake becomes a problem and a broken
 * node, and reading goes on at the next comma or closing parenthesis, so that later mistakes are found as well. The file
 * is long because it has one method for each rule of the grammar.
 */
export class Reader {
  readonly problems: Problem[];
  private readonly placed: PlacedText;
  private readonly tokens: readonly Token[];
  private next = 0;
  private depth = 0;
  /** Where reading went on after the last mistake; a second mistake at the same place would only echo the first. */
  private resumedAt = -1;

  constructor(placed: PlacedText) {
    this.placed = placed;
    const { tokens, problems } = tokensOf(placed);
    this.tokens = tokens;
    this.problems = [...problems];
  }

  formula(): Node {
    const body = this.argument();
    const left = this.token;
    if (left.kind === 'end') return body;
    const remedy =
      left.text === 'where'
        ? 'A second condition is joined with `and`.'
        : `Put an operator before ${written[left.kind]}, or take it out.`;
    return this.broken({ code: 'unexpected-word', wanted: 'an operator or the end of the formula', remedy });
  }

  private get token(): Token {
    return this.tokens[this.next]!;
  }

  private is(text: string): boolean {
    const { kind, text: found } = this.token;
    return found === text && (kind === 'word' || kind === 'symbol');
  }

  private take(text: string): boolean {
    if (!this.is(text)) return false;
    this.next += 1;
    return true;
  }

  /** The span from a beginning to the end of what was read last. */
  private from(offset: number): Span {
    return { offset, end: this.next === 0 ? offset : this.tokens[this.next - 1]!.end };
  }

  /** Reading goes on at the next comma or closing parenthesis, or at the latter alone. */
  private broken(mistake: Mistake, pastCommas = false): Node {
    const at = this.token;
    if (this.next !== this.resumedAt) this.problems.push(problemAt(this.placed, at, mistake));
    let open = 0;
    while (this.token.kind !== 'end') {
      if (this.is('(')) open += 1;
      else if (open === 0 && (this.is(')') || (this.is(',') && !pastCommas))) break;
      else if (this.is(')')) open -= 1;
      this.next += 1;
    }
    this.resumedAt = this.next;
    return { kind: 'broken', ...this.from(at.offset) };
  }

  /** `[ field "of" ] [ base ] [ "here" ] [ "where" condition ]`, or a plain formula. */
  private argument(): Node {
    const { offset } = this.token;
    if (this.is('where') || this.is('here')) return this.rows(offset, null, null);
    const first = this.either();
    if (this.take('of')) {
      const base = this.token.kind === 'word' && !isLanguageWord(this.token.text) ? this.name() : null;
      if (base === null && !this.is('where') && !this.is('here')) {
        return this.broken({
          code: 'unexpected-word',
          wanted: 'a table, a selection, `here` or `where` after `of`',
          remedy: 'Name the rows: sum(staff_hours of station_days).',
        });
      }
      return this.rows(offset, first, base);
    }
    if (!this.is('here') && !this.is('where')) return first;
    if (first.kind === 'name') return this.rows(offset, null, first);
    return this.broken({
      code: 'unexpected-word',
      wanted: 'a table or a selection before this word',
      remedy: 'Write the field, then `of`, then the rows: sum(staff_hours of station_days where …).',
    });
  }

  private rows(offset: number, field: Node | null, base: NameNode | null): RowsNode {
    const here = this.take('here');
    const where = this.take('where') ? this.either() : null;
    return { kind: 'rows', field, base, here, where, ...this.from(offset) };
  }

  private either(): Node {
    if (this.depth >= formulaBounds.depth) {
      return this.broken({
        code: 'too-deep',
        wanted: `at most ${formulaBounds.depth} levels of nesting`,
        remedy: 'Give the inner part a name of its own as a figure.',
      });
    }
    this.depth += 1;
    const { offset } = this.token;
    let left = this.both();
    while (this.take('or')) {
      const right = this.both();
      left = { kind: 'logic', operator: 'or', left, right, ...this.from(offset) };
    }
    this.depth -= 1;
    return left;
  }

  private both(): Node {
    const { offset } = this.token;
    let left = this.negation();
    while (this.take('and')) {
      const right = this.negation();
      left = { kind: 'logic', operator: 'and', left, right, ...this.from(offset) };
    }
    return left;
  }

  private negation(): Node {
    const { offset } = this.token;
    if (!this.take('not')) return this.comparison();
    const of = this.comparison();
    return { kind: 'not', of, ...this.from(offset) };
  }

  private comparison(): Node {
    const { offset } = this.token;
    const left = this.sum();
    const start = this.token;
    if (this.take('is')) return this.identity(left, start);
    const negated = this.take('not');
    if (this.take('in')) return this.among(left, start, negated);
    if (this.take('between')) return this.between(left, start, negated);
    if (negated) {
      return this.broken({
        code: 'unexpected-word',
        wanted: '`in` or `between` after `not`',
        remedy: 'Write `is not` to say that two values differ.',
      });
    }
    if (start.kind !== 'symbol' || !orders.has(start.text)) return left;
    this.next += 1;
    const right = this.sum();
    const operator = start.text as '<' | '<=' | '>' | '>=';
    return { kind: 'comparison', operator, operatorAt: start, left, right, ...this.from(offset) };
  }

  private identity(left: Node, start: Token): Node {
    const negated = this.take('not');
    const operatorAt = this.from(start.offset);
    if (this.take('missing')) return { kind: 'missing', of: left, negated, ...this.from(left.offset) };
    const right = this.sum();
    const operator = negated ? 'is not' : 'is';
    return { kind: 'comparison', operator, operatorAt, left, right, ...this.from(left.offset) };
  }

  private among(of: Node, start: Token, negated: boolean): Node {
    const operatorAt = this.from(start.offset);
    const named = this.token.kind === 'word' && !isLanguageWord(this.token.text) ? this.name() : null;
    if (named === null && !this.is('(')) {
      return this.broken({
        code: 'unexpected-word',
        wanted: 'a list after `in`: values in parentheses, or the name of an input that is a list',
        remedy: 'Write the values in parentheses with commas between: in ("port", "starboard").',
      });
    }
    const values = named === null ? this.inParentheses() : [named];
    if (values === null) return this.broken(unclosed);
    const node: AmongNode = { kind: 'among', of, values, negated, operatorAt, ...this.from(of.offset) };
    return node;
  }

  private between(of: Node, start: Token, negated: boolean): Node {
    const operatorAt = this.from(start.offset);
    const low = this.sum();
    if (!this.take('and')) {
      return this.broken({
        code: 'unexpected-word',
        wanted: '`and` with the upper end',
        remedy: 'Write both ends: between 10 and 20.',
      });
    }
    const high = this.sum();
    return { kind: 'between', of, low, high, negated, operatorAt, ...this.from(of.offset) };
  }

  private sum(): Node {
    return this.chain(['+', '-'], () => this.product());
  }

  private product(): Node {
    return this.chain(['*', '/'], () => this.signed());
  }

  private chain(operators: readonly ArithmeticOperator[], operand: () => Node): Node {
    const { offset } = this.token;
    let left = operand();
    for (;;) {
      const operatorAt = this.token;
      const operator = operators.find((sign) => this.take(sign));
      if (operator === undefined) return left;
      const right = operand();
      left = { kind: 'arithmetic', operator, operatorAt, left, right, ...this.from(offset) };
    }
  }

  private signed(): Node {
    const { offset } = this.token;
    if (!this.take('-')) return this.primary();
    const of = this.primary();
    return { kind: 'negative', of, ...this.from(offset) };
  }

  private primary(): Node {
    const { kind, text, offset, end } = this.token;
    if (kind === 'number') {
      this.next += 1;
      return { kind: 'number', value: Number(text), offset, end };
    }
    if (kind === 'text') {
      this.next += 1;
      return { kind: 'text', text, offset, end };
    }
    if (kind === 'word' && !isLanguageWord(text)) {
      const name = this.name();
      if (this.is('(')) return this.call(name);
      if (this.is('with')) return this.withInputs(name);
      return this.looksUp() ? this.lookup(name) : name;
    }
    if (this.take('(')) {
      const inner = this.either();
      if (this.take(')')) return inner;
      const broken = this.broken(this.is(',') ? loneList : unclosed, true);
      // Its own closing parenthesis, which would otherwise be taken for that of the call around it.
      this.take(')');
      return broken;
    }
    return this.broken({
      code: kind === 'end' ? 'unfinished-formula' : 'unexpected-word',
      wanted: 'a value: a name, a number, a text or a function',
      remedy: kind === 'end' ? 'Finish the formula.' : `A value must stand before ${written[kind]} here.`,
    });
  }

  /** Whether what follows a name is `of`, a name and `for`. */
  private looksUp(): boolean {
    return this.is('of') && this.tokens[this.next + 1]?.kind === 'word' && this.tokens[this.next + 2]?.text === 'for';
  }

  /** `column "of" sheet "for" ( primary or "(" either { "," either } ")" )`. */
  private lookup(column: NameNode): Node {
    this.take('of');
    const sheet = this.name();
    this.take('for');
    const keys = this.is('(') ? this.inParentheses() : [this.primary()];
    if (keys === null) return this.broken(unclosed);
    return { kind: 'lookup', column, sheet, keys, ...this.from(column.offset) };
  }

  /** `figure "with" input "as" primary { "with" input "as" primary }`. */
  private withInputs(figure: NameNode): Node {
    const changes: InputChange[] = [];
    while (this.take('with')) {
      const input = this.token.kind === 'word' && !isLanguageWord(this.token.text) ? this.name() : null;
      if (input === null || !this.take('as')) return this.broken(withForm);
      changes.push({ input, value: this.signed() });
    }
    return { kind: 'with', figure, changes, ...this.from(figure.offset) };
  }

  /** Values in parentheses with commas between; null where they are not closed. */
  private inParentheses(): readonly Node[] | null {
    this.take('(');
    const values: Node[] = [];
    do values.push(this.listed(() => this.either()));
    while (this.take(','));
    return this.take(')') ? values : null;
  }

  /** One of several parts between commas; what follows it wrongly is told here, so that the others are still read. */
  private listed(read: () => Node): Node {
    const part = read();
    return this.is(',') || this.is(')') ? part : this.broken(unclosed);
  }

  private name(): NameNode {
    const { text, offset, end } = this.token;
    this.next += 1;
    return { kind: 'name', name: text, offset, end };
  }

  private call(named: NameNode): Node {
    this.take('(');
    const given: Node[] = [];
    if (!this.is(')')) {
      do given.push(this.listed(() => this.argument()));
      while (this.take(','));
    }
    if (!this.take(')')) return this.broken(unclosed);
    return { kind: 'call', name: named.name, named, arguments: given, ...this.from(named.offset) };
  }
}

const unclosed: Mistake = {
  code: 'unexpected-word',
  wanted: 'a closing parenthesis, a comma or an operator',
  remedy: 'Close the parenthesis, or put an operator between two values; a second condition is joined with `and`.',
};

const withForm: Mistake = {
  code: 'unexpected-word',
  wanted: 'an input, `as` and its other value after `with`',
  remedy: 'Write the input and its other value: interception with this_season as 2024.',
};

const loneList: Mistake = {
  code: 'unexpected-word',
  wanted: 'one value in the parentheses',
  remedy: 'A list of values stands only after `in`.',
};
