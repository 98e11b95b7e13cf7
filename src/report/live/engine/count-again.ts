import type { LivePart, LiveReport } from '../../carried/live-report.js';
import type { ReaderChoice } from '../../carried/recalculation.js';
import { choiceWords } from '../../choice/choice-words.js';
import { elementsOf, markStale, restorePart, sayAccountsAgain, showPart } from './show-part.js';

/** How many parts are shown before the page has its turn. */
const shownInATurn = 6;

/**
 * Counts the parts of a page again, those in sight first and in one go; between others the page may answer its reader, and a
 * newer choice ends an older one. A part whose HTML stays the same is not touched.
 */
export class CountAgain {
  readonly #report: LiveReport;
  readonly #shown = new Map<string, string>();
  /** The parts that were replaced, as the page was made: with files and lines, and nothing to count again. */
  readonly #made = new Map<string, readonly HTMLElement[]>();
  #turn = 0;

  constructor(report: LiveReport) {
    this.#report = report;
  }

  /** Counts for a choice; true when the page shows it whole, false when a newer choice came before. */
  async count(choice: ReaderChoice): Promise<boolean> {
    const turn = ++this.#turn;
    const report = this.#report;
    // Before anything is changed, so that the page need not be laid out for it.
    const [near, far] = bySight(report.parts);
    report.choose(choice);
    for (const { key } of report.parts) markStale(key, true);
    this.#noteStill(true);
    for (const part of near) {
      report.count(part);
      this.#show(part.key, report.render(part, report.methods()));
    }
    await answerReader();
    if (turn !== this.#turn) return false;
    for (const part of far) {
      report.count(part);
      await answerReader();
      if (turn !== this.#turn) return false;
    }
    // Methods are numbered in the page's order, so that every mark is right only now.
    const methods = report.methods();
    for (const [at, part] of [...near, ...far].entries()) {
      this.#show(part.key, report.render(part, methods));
      // After each turn the whole page may be laid out anew.
      if (at % shownInATurn < shownInATurn - 1) continue;
      await answerReader();
      if (turn !== this.#turn) return false;
    }
    for (const [key, html] of report.renderClosing(methods)) this.#show(key, html);
    return true;
  }

  /**
   * Counts what the page shows, while it has nothing else to do, so that a first change finds counted what it does not reach.
   * Ends where a reader chooses, and does nothing after one has.
   */
  async prepare(): Promise<void> {
    if (this.#turn > 0) return;
    const turn = ++this.#turn;
    this.#report.choose({ only: new Map(), inputs: new Map() });
    for (const part of this.#report.parts) {
      await idle();
      if (turn !== this.#turn) return;
      this.#report.count(part);
    }
  }

  /** Shows the page as it was made. */
  restore(): void {
    this.#turn++;
    for (const [key, elements] of this.#made) restorePart(key, elements);
    this.#made.clear();
    this.#shown.clear();
    for (const { key } of this.#report.parts) markStale(key, false);
    this.#noteStill(false);
  }

  /** Lets the page stand as it is. */
  giveUp(): void {
    this.#turn++;
    for (const { key } of this.#report.parts) markStale(key, false);
  }

  #show(key: string, html: string): void {
    if (this.#shown.get(key) === html) {
      markStale(key, false);
      sayAccountsAgain(key);
      return;
    }
    const replaced = showPart(key, html, async (sheet, column, row) => this.#report.account(sheet, column, row));
    if (!this.#made.has(key)) this.#made.set(key, replaced);
    this.#shown.set(key, html);
  }

  /** Says under charts that cannot be drawn again what they show. */
  #noteStill(isChosen: boolean): void {
    for (const key of this.#report.still) {
      for (const element of elementsOf(key)) {
        element.querySelector('.note.still')?.remove();
        if (!isChosen) continue;
        const note = document.createElement('p');
        note.className = 'note still';
        note.textContent = choiceWords.stillChart;
        element.append(note);
      }
    }
  }
}

function bySight(parts: readonly LivePart[]): readonly [near: readonly LivePart[], far: readonly LivePart[]] {
  const inSight = (part: LivePart): boolean =>
    elementsOf(part.key).some((element) => {
      const { top, bottom } = element.getBoundingClientRect();
      return bottom > 0 && top < innerHeight;
    });
  const near = new Set(parts.filter(inSight));
  return [[...near], parts.filter((part) => !near.has(part))];
}

/** Resumes after the page has had its turn. */
function answerReader(): Promise<void> {
  return new Promise((resume) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resume();
    };
    port2.postMessage(null);
  });
}

/** Resumes once the page has nothing else to do. */
function idle(): Promise<void> {
  return new Promise((resume) => {
    if ('requestIdleCallback' in window) requestIdleCallback(() => resume());
    else setTimeout(resume);
  });
}
