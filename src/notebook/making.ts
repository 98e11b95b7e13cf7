import { evaluate } from '../formula/evaluate.js';
import { inputValue } from '../formula/input-value.js';
import type { FormulaKind } from '../formula/kind.js';
import type { Result } from '../formula/result.js';
import { resultOf } from '../formula/result-of.js';
import { type Formula, namesIn } from '../formula/tree.js';
import { kindOfValue } from '../formula/value/kind-of-value.js';
import type { Problem } from '../problem/problem.js';
import { computeSheet } from './compute-sheet.js';
import { emptySheet } from './computed-sheet.js';
import type { Declared } from './declared.js';
import { declaredTables, groupTable } from './declared-tables.js';
import type { Cell, SheetDeclaration } from './document.js';
import type { EvaluatedFigure, EvaluatedInput, EvaluatedSelection, EvaluatedSheet } from './evaluated.js';
import { cellProblem, checkCell, checkShownAs, formulaIn } from './formula-cell.js';
import { formulaKey } from './formula-key.js';
import { inputShown } from './input-shown.js';
import { neededNames } from './needed-names.js';
import type { Knowledge, NameWorkings, SheetWorkings } from './workings.js';

/** A name that must be computed: its formula as read (a sheet has several of its own) and the names it needs. */
export interface Item {
  readonly name: string;
  readonly declared: Declared;
  readonly formula: Formula | null;
  readonly needs: readonly string[];
}

/** The growing answer: each name is computed once all that it needs is there. */
export class Making {
  readonly inputs = new Map<string, EvaluatedInput>();
  readonly selections = new Map<string, EvaluatedSelection>();
  readonly figures = new Map<string, EvaluatedFigure>();
  readonly sheets = new Map<string, EvaluatedSheet>();
  readonly sheetWorkings = new Map<string, SheetWorkings>();
  readonly names = new Map<string, NameWorkings>();
  private readonly knowledge: Knowledge;

  constructor(knowledge: Knowledge) {
    this.knowledge = knowledge;
  }

  input({ name, input }: Extract<Declared, { kind: 'input' }>): void {
    const { file, kinds, values, problems, book, keys, memory, definitions } = this.knowledge;
    definitions.inputs.add(name.text);
    const counted = [...book.tables.values()].map((table) => table.counted);
    const at = (cell: Cell) => ({ file, line: cell.line, column: cell.column });
    const found = inputValue(
      input.value.text,
      input.unit.text,
      { value: at(input.value), unit: at(input.unit) },
      counted,
    );
    if (!('kind' in found)) {
      const told = found.problems.map((problem) => naming(problem, name.text, input.source.text));
      problems.push(...told);
      this.fail(name.text, told);
    } else {
      kinds.set(name.text, kindOfValue(found));
      values.set(name.text, found);
      keys.set(name.text, memory.keyOf('input', input.value.text, input.unit.text));
    }
    const value = inputShown(resultOf(values.get(name.text)!), book);
    this.inputs.set(name.text, {
      name: name.text,
      value,
      unit: input.unit.text,
      source: input.source.text,
      ...(input.low.text === '' || input.high.text === '' ? {} : { range: `${input.low.text} to ${input.high.text}` }),
      line: name.line,
    });
  }

  item(declared: Declared, all: ReadonlyMap<string, Declared>): Item {
    const { file } = this.knowledge;
    const formulas = formulaCells(declared).map((cell) => ({ cell, read: formulaIn(file, cell) }));
    const own = declared.kind === 'sheet' ? new Set(declared.sheet.columns.map(({ name }) => name.text)) : new Set();
    const { text: name } = declared.name;
    const { book } = this.knowledge;
    const group = declared.kind === 'sheet' ? groupTable(declared.sheet, all, book) : null;
    const tableOf = declaredTables(all, book, group);
    const isSheet = (other: string) => all.get(other)?.kind === 'sheet';
    const rowsOfSheet = declared.kind === 'sheet' ? declared.sheet.maker.rows : null;
    // A column is known to the columns of its sheet, not to the rows that the sheet is made of.
    const used = formulas.flatMap(({ cell, read }) => {
      const names = 'tree' in read ? neededNames(name, read.tree, book, tableOf, isSheet) : [];
      return cell === rowsOfSheet ? names : names.filter((need) => !own.has(need));
    });
    // A sheet may ask about its own rows: its columns have an order of their own.
    const itself = declared.kind === 'sheet' ? name : null;
    const needs = [...new Set([...used, ...toldInputs(declared, all)])].filter(
      (need) => all.has(need) && need !== itself,
    );
    this.knowledge.definitions.made.set(name, { formula: null, needs });
    const single = declared.kind === 'sheet' ? undefined : formulas[0]?.read;
    if (single !== undefined && 'problems' in single) {
      this.knowledge.problems.push(...single.problems);
      this.show(declared, { kind: 'problem', problems: single.problems }, single.problems);
      this.fail(declared.name.text, single.problems);
    }
    return {
      name: declared.name.text,
      declared,
      formula: single !== undefined && 'tree' in single ? single.tree : null,
      needs,
    };
  }

  loops(loops: readonly (readonly string[])[], itemOf: ReadonlyMap<string, Item>): void {
    for (const loop of loops) {
      const members = loop.slice(0, -1).map((name) => itemOf.get(name)!);
      const at = formulaCells(members[0]!.declared)[0]!;
      const remedy = `The circle is ${loop.join(' → ')}: take one of them out of another’s formula.`;
      const problem = cellProblem(
        this.knowledge.file,
        at,
        'loop',
        'names that do not need each other in a circle',
        remedy,
      );
      this.knowledge.problems.push(problem);
      for (const { name, declared } of members) {
        this.fail(name, [problem]);
        this.show(declared, { kind: 'problem', problems: [problem] }, [problem]);
      }
    }
  }

  compute({ name, declared, formula, needs }: Item): void {
    if (declared.kind === 'sheet') {
      const { sheet, workings, asked } = computeSheet(declared.sheet, this.knowledge);
      this.knowledge.problems.push(...sheet.problems);
      this.sheets.set(name, sheet);
      this.sheetWorkings.set(name, { ...workings, needs, ofRows: ofRows(declared.sheet, this.knowledge.file) });
      if (asked === null) this.fail(name, sheet.problems);
      else {
        this.knowledge.keys.set(name, asked.key);
        this.knowledge.kinds.set(name, kindOfValue(asked.value));
        this.knowledge.values.set(name, asked.value);
      }
      return;
    }
    if (formula === null || declared.kind === 'input') return;
    const checked = checkCell(formula, this.knowledge, null);
    const found = [...checked.problems, ...misplaced(this.knowledge.file, declared, checked.kind)];
    if (found.length > 0 || checked.kind.kind === 'unknown') {
      this.knowledge.problems.push(...found);
      this.fail(name, found);
      this.show(
        declared,
        found.length > 0 ? { kind: 'problem', problems: found } : standsOnProblem(needs, this.knowledge),
        found,
      );
      return;
    }
    const key = formulaKey(formula, this.knowledge);
    const { memory, environment } = this.knowledge;
    const value = memory.value(name, key, () => evaluate(formula, environment));
    this.knowledge.definitions.made.set(name, { formula, needs });
    this.knowledge.keys.set(name, key);
    this.knowledge.kinds.set(name, checked.kind);
    this.knowledge.values.set(name, value);
    this.names.set(name, { formula, value, needs });
    this.show(declared, resultOf(value), []);
  }

  /** Makes a name known as failed, so that what stands on it says nothing more. */
  private fail(name: string, problems: readonly Problem[]): void {
    const unknown: FormulaKind = { kind: 'unknown' };
    this.knowledge.kinds.set(name, unknown);
    this.knowledge.values.set(name, { kind: 'problem', problems });
  }

  private show(declared: Declared, result: Result, problems: readonly Problem[]): void {
    const { text: name, line } = declared.name;
    if (declared.kind === 'figure') {
      const { formula, shownAs } = declared.figure;
      this.figures.set(name, { name, formula: formula.text, shownAs: shownAs.text, result, line });
    } else if (declared.kind === 'selection') {
      const value = this.knowledge.values.get(name);
      const rows = value?.kind === 'rows' ? value.counted.rows.length : 0;
      const table = value?.kind === 'rows' ? value.table : '';
      this.selections.set(name, { name, formula: declared.selection.rows.text, table, rows, problems, line });
    } else if (declared.kind === 'sheet') {
      const { sheet, workings } = emptySheet(declared.sheet, problems);
      this.sheets.set(name, sheet);
      this.sheetWorkings.set(name, workings);
    }
  }
}

/** The inputs that a finding is told behind `with`. */
function toldInputs(declared: Declared, all: ReadonlyMap<string, Declared>): readonly string[] {
  if (declared.kind !== 'sheet' || declared.sheet.maker.kind !== 'finding') return [];
  return declared.sheet.maker.options.map(({ value }) => value.text).filter((name) => all.get(name)?.kind === 'input');
}

function formulaCells(declared: Declared): readonly Cell[] {
  switch (declared.kind) {
    case 'figure':
      return [declared.figure.formula];
    case 'selection':
      return [declared.selection.rows];
    case 'sheet':
      return [declared.sheet.maker.rows, ...declared.sheet.columns.map(({ formula }) => formula)];
    case 'input':
      return [];
  }
}

/** The names in the formula of a sheet's rows. */
function ofRows({ maker }: SheetDeclaration, file: string): readonly string[] {
  const read = formulaIn(file, maker.rows);
  return 'tree' in read ? namesIn(read.tree) : [];
}

function misplaced(file: string, declared: Declared, kind: FormulaKind): readonly Problem[] {
  if (kind.kind === 'unknown') return [];
  if (declared.kind === 'selection' && kind.kind !== 'rows') {
    const remedy = 'Put it in a table of figures, or name a table with a condition behind `where`.';
    return [cellProblem(file, declared.selection.rows, 'not-rows', 'rows of a table', remedy)];
  }
  if (declared.kind !== 'figure') return [];
  if (kind.kind === 'rows' || kind.kind === 'sheet' || kind.kind === 'list') {
    const remedy =
      kind.kind === 'list'
        ? 'A list stands after `in`: where month in early_months.'
        : 'Put it in a table of selections, or count it: count(…).';
    return [cellProblem(file, declared.figure.formula, 'not-a-value', 'a single value', remedy)];
  }
  return checkShownAs(file, declared.figure.shownAs, kind);
}

/** A problem of a blank input with its name, and with what stands beside it as its source: often what is asked for. */
function naming(problem: Problem, name: string, source: string): Problem {
  if (problem.code !== 'no-value') return problem;
  const beside = source === '' ? '' : ` Beside it stands: ${source}.`;
  return { ...problem, wanted: `a value of ${name}`, remedy: `${problem.remedy}${beside}` };
}

function standsOnProblem(needs: readonly string[], { kinds }: Knowledge): Result {
  const failed = needs.filter((need) => {
    const kind = kinds.get(need);
    if (kind?.kind === 'sheet') return [...kind.columns.values()].some((column) => column.kind === 'unknown');
    return kind?.kind === 'unknown';
  });
  return { kind: 'missing', why: `it stands on ${failed.join(' and ')}, which has a problem` };
}
