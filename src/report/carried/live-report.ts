import type { ElementContent } from 'hast';
import { toHtml } from 'hast-util-to-html';
import type { DrawnWidths } from '../../chart/draw-chart.js';
import type { Block } from '../../notebook/evaluated.js';
import { namesInBlock } from '../../notebook/names-in-block.js';
import { traceCellAt, traceFigure } from '../../notebook/trace.js';
import type { NotebookWorkings } from '../../notebook/workings.js';
import type { Problem } from '../../problem/problem.js';
import { writtenIn } from '../../record/written-numbers.js';
import { cellTexts } from '../cell-accounts.js';
import { closingSections } from '../closing-sections.js';
import { rememberedCharts } from '../desk/remembered-charts.js';
import { markedPart } from '../marked-part.js';
import { type Methods, methodsOf } from '../methods.js';
import { blockPart, type DrawFigure } from '../page-parts.js';
import { problemBox } from '../problem-box.js';
import type { CarriedSeason } from './carried-season.js';
import { type ReaderChoice, Recalculation } from './recalculation.js';

/** A part of the page that follows a reader's choice, and the names that it shows. */
export interface LivePart {
  readonly key: string;
  readonly names: readonly string[];
}

/** Kinds of charts whose library does not draw in a page: they show what the page was made with. */
const stillKinds: ReadonlySet<string> = new Set(['heat']);

const closing: ReadonlySet<string> = new Set(['methods', 'cautions']);

/** A page's parts made again for what a reader chose, as HTML that is the same as the command writes for that choice. */
export class LiveReport {
  readonly #recalculation: Recalculation;
  readonly #draw: DrawFigure;
  /** The parts that follow a choice, in the page's order. */
  readonly parts: readonly LivePart[];
  /** The keys of the charts that do not. */
  readonly still: readonly string[];

  /** Charts are drawn at one width or both: a page that is open needs but the one that it shows. */
  constructor(season: CarriedSeason, widths?: DrawnWidths) {
    this.#draw = rememberedCharts(widths);
    this.#recalculation = new Recalculation(season);
    const blocks = this.#blocks.map((block, at) => ({ block, key: `block-${at}`, names: namesInBlock(block) }));
    const shown = blocks.filter(({ block, names }) => block.kind !== 'inputs' && names.length > 0);
    const isStill = (block: Block): boolean => block.kind === 'chart' && stillKinds.has(block.chart.kind);
    this.parts = shown.filter(({ block }) => !isStill(block)).map(({ key, names }) => ({ key, names }));
    this.still = shown.filter(({ block }) => isStill(block)).map(({ key }) => key);
  }

  get #blocks(): readonly Block[] {
    return this.workings.notebook.blocks;
  }

  #blockOf(key: string): Block {
    return this.#blocks[Number(key.slice('block-'.length))]!;
  }

  /** The names that show all records whatever is chosen. */
  get whole(): readonly string[] {
    return [...this.#recalculation.whole];
  }

  /** Whether a part is a chart. */
  isChart(key: string): boolean {
    return this.#blockOf(key).kind === 'chart';
  }

  /** All that has been counted for the choice. */
  get workings(): NotebookWorkings {
    return this.#recalculation.workings;
  }

  /** Begins a choice; its parts must be counted before they are rendered. */
  choose(choice: ReaderChoice): void {
    this.#recalculation.choose(choice);
  }

  /** Counts what a part shows. */
  count({ names }: LivePart): void {
    this.#recalculation.compute(names);
  }

  /** The methods of all that has been counted, numbered as the page numbers them. */
  methods(): Methods {
    return methodsOf(this.workings.notebook);
  }

  /** A counted part as HTML. */
  render({ key }: LivePart, methods: Methods): string {
    const { workings } = this;
    const block = this.#blockOf(key);
    const names = block.kind === 'figures' ? block.names : [];
    const traces = new Map(
      names.flatMap((name) => {
        const trace = traceFigure(workings, name);
        return trace === null ? [] : [[name, trace] as const];
      }),
    );
    // Most readers open no account: each is told when it is asked for.
    const context = { traces, cell: 'asked' as const };
    return htmlOf(key, blockPart(block, workings.notebook, methods, context, this.#draw).elements);
  }

  /** The account of a cell of a counted sheet as texts, a term and what is said of it in turn; null where it is not counted. */
  accountOf(sheetName: string, column: string, row: number): readonly string[] | null {
    return writtenIn(this.workings.settings.locale, () => {
      const trace = traceCellAt(this.workings, sheetName, column, row);
      return trace === null ? null : cellTexts(trace, trace.result, trace.shownAs);
    });
  }

  /** The closing sections that follow a choice, by their keys. */
  renderClosing(methods: Methods): readonly (readonly [key: string, html: string])[] {
    const { notebook, book } = this.workings;
    const context = { sum: { ...book.sum, files: [] }, program: { version: '', fingerprint: '' }, date: '' };
    return closingSections(notebook, context, methods)
      .filter(({ id }) => closing.has(id))
      .map(({ id, element }) => [id, htmlOf(id, [element])] as const);
  }

  /** What is wrong with the inputs chosen. */
  get problems(): readonly Problem[] {
    return this.#recalculation.problems;
  }

  /** The same in HTML; empty where nothing is wrong. */
  renderProblems(): string {
    return this.problems.length === 0 ? '' : toHtml(problemBox(this.problems));
  }
}

function htmlOf(key: string, elements: readonly ElementContent[]): string {
  return toHtml({ type: 'root', children: markedPart(key, elements) });
}
