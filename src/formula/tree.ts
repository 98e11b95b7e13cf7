import type { PlacedText, Span } from './place.js';

/** A number written out. */
export interface NumberNode extends Span {
  readonly kind: 'number';
  readonly value: number;
}

/** A text in quotes. */
export interface TextNode extends Span {
  readonly kind: 'text';
  readonly text: string;
}

/** A field, figure, input, selection, table, or a sheet's column or key: which one is decided by the scope. */
export interface NameNode extends Span {
  readonly kind: 'name';
  readonly name: string;
}

/** A function with its arguments. */
export interface CallNode extends Span {
  readonly kind: 'call';
  readonly name: string;
  /** The span of the function's name alone. */
  readonly named: Span;
  readonly arguments: readonly Node[];
}

/** A number with its sign turned. */
export interface NegativeNode extends Span {
  readonly kind: 'negative';
  readonly of: Node;
}

/** What two numbers can be calculated with; `×` and `÷` are read as `*` and `/`. */
export type ArithmeticOperator = '+' | '-' | '*' | '/';

/** Two numbers calculated with. */
export interface ArithmeticNode extends Span {
  readonly kind: 'arithmetic';
  readonly operator: ArithmeticOperator;
  readonly operatorAt: Span;
  readonly left: Node;
  readonly right: Node;
}

/** How two values can be compared. */
export type ComparisonOperator = 'is' | 'is not' | '<' | '<=' | '>' | '>=';

/** Two values compared. */
export interface ComparisonNode extends Span {
  readonly kind: 'comparison';
  readonly operator: ComparisonOperator;
  readonly operatorAt: Span;
  readonly left: Node;
  readonly right: Node;
}

/** `of is missing`, or with `negated` `of is not missing`. */
export interface MissingNode extends Span {
  readonly kind: 'missing';
  readonly of: Node;
  readonly negated: boolean;
}

/** `of in (values)`, or `of not in (values)`. */
export interface AmongNode extends Span {
  readonly kind: 'among';
  readonly of: Node;
  readonly values: readonly Node[];
  readonly operatorAt: Span;
  readonly negated: boolean;
}

/** `of between low and high`, both ends included, or `of not between low and high`. */
export interface BetweenNode extends Span {
  readonly kind: 'between';
  readonly of: Node;
  readonly low: Node;
  readonly high: Node;
  readonly operatorAt: Span;
  readonly negated: boolean;
}

/** A condition turned round. */
export interface NotNode extends Span {
  readonly kind: 'not';
  readonly of: Node;
}

/** Two conditions joined. */
export interface LogicNode extends Span {
  readonly kind: 'logic';
  readonly operator: 'and' | 'or';
  readonly left: Node;
  readonly right: Node;
}

/** Rows of a table, a selection or (with no base) the sheet's group, and what is taken of each: `field of base here where where`. */
export interface RowsNode extends Span {
  readonly kind: 'rows';
  readonly field: Node | null;
  readonly base: NameNode | null;
  readonly here: boolean;
  readonly where: Node | null;
}

/** `column of sheet for key`: what a sheet's column holds in the row of that key, or with several keys `for (one, other)`. */
export interface LookupNode extends Span {
  readonly kind: 'lookup';
  readonly column: NameNode;
  readonly sheet: NameNode;
  readonly keys: readonly Node[];
}

/** Another value for an input. */
export interface InputChange {
  readonly input: NameNode;
  readonly value: Node;
}

/** `figure with input as value`: the figure as it would be if its inputs had other values. */
export interface WithNode extends Span {
  readonly kind: 'with';
  readonly figure: NameNode;
  readonly changes: readonly InputChange[];
}

/** A stretch that could not be read; a problem says why. Never found in a tree that `parseFormula` gave back. */
export interface BrokenNode extends Span {
  readonly kind: 'broken';
}

/** A part of a formula. */
export type Node =
  | NumberNode
  | TextNode
  | NameNode
  | CallNode
  | NegativeNode
  | ArithmeticNode
  | ComparisonNode
  | MissingNode
  | AmongNode
  | BetweenNode
  | NotNode
  | LogicNode
  | RowsNode
  | LookupNode
  | WithNode
  | BrokenNode;

/** A formula that has been read: its text, where it stands, and its tree. */
export interface Formula extends PlacedText {
  readonly body: Node;
}

/** The nodes directly below one, in the order of the text. */
export function parts(node: Node): readonly Node[] {
  switch (node.kind) {
    case 'call':
      return node.arguments;
    case 'negative':
    case 'not':
    case 'missing':
      return [node.of];
    case 'arithmetic':
    case 'comparison':
    case 'logic':
      return [node.left, node.right];
    case 'among':
      return [node.of, ...node.values];
    case 'between':
      return [node.of, node.low, node.high];
    case 'rows':
      return [node.field, node.base, node.where].filter((part) => part !== null);
    case 'lookup':
      // The column is a name of the sheet's, not of the notebook's.
      return [node.sheet, ...node.keys];
    case 'with':
      return [node.figure, ...node.changes.flatMap(({ input, value }) => [input, value])];
    case 'number':
    case 'text':
    case 'name':
    case 'broken':
      return [];
  }
}

/** Whether a node is a number written out, such as `90` or `-5`: it takes the unit of what it is compared with. */
export function isWrittenNumber(node: Node): boolean {
  return node.kind === 'number' || (node.kind === 'negative' && node.of.kind === 'number');
}

/** Every name that a formula uses (fields and tables too, functions not), each once, in order of first use. */
export function namesIn(formula: Formula): readonly string[] {
  const names = new Set<string>();
  const visit = (node: Node): void => {
    if (node.kind === 'name') names.add(node.name);
    parts(node).forEach(visit);
  };
  visit(formula.body);
  return [...names];
}
