import type { LivePart, LiveReport } from '../../carried/live-report.js';
import type { ReaderChoice } from '../../carried/recalculation.js';
import { choiceWords } from '../../choice/choice-words.js';
import { markStale, partsOnPage, restorePart, showPart, tellAccountsAgain } from './show-part.js';

/** How many parts are shown before the page has its turn. */
const shownInATurn = 6;

/**
 * Counts the parts of a page again, those in sight first, in one go and drawn before anything else; between others the page
 * may answer its reader, and a newer choice ends an older one. A part whose HTML stays the same is not touched.
 */
export class CountAgain {
  readonly #report: LiveReport;
  readonly #shown = new Map<string, string>();
  /** The elements of each part as they stand now. */
  readonly #standing = partsOnPage();
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
    const [near, far] = this.#bySight();
    report.choose(choice);
    for (const part of near) {
      report.count(part);
      this.#show(part.key, report.render(part, report.methods()));
    }
    await nextFrame();
    if (turn !== this.#turn) return false;
    for (const { key } of far) markStale(this.#elementsOf(key), true);
    this.#noteStill(true);
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
    const [near, far] = this.#bySight();
    for (const part of [...near, ...far]) {
      await idle();
      if (turn !== this.#turn) return;
      this.#report.count(part);
    }
    // Code that has run once runs faster when a reader waits for it.
    for (const part of near) {
      await idle();
      if (turn !== this.#turn) return;
      this.#report.render(part, this.#report.methods());
    }
  }

  /** Shows the page as it was made. */
  restore(): void {
    this.#turn++;
    for (const [key, elements] of this.#made) {
      restorePart(this.#elementsOf(key), elements);
      this.#standing.set(key, elements);
    }
    this.#made.clear();
    this.#shown.clear();
    for (const { key } of this.#report.parts) markStale(this.#elementsOf(key), false);
    this.#noteStill(false);
  }

  /** Lets the page stand as it is. */
  giveUp(): void {
    this.#turn++;
    for (const { key } of this.#report.parts) markStale(this.#elementsOf(key), false);
  }

  #elementsOf(key: string): readonly HTMLElement[] {
    return this.#standing.get(key) ?? [];
  }

  #show(key: string, html: string): void {
    const before = this.#elementsOf(key);
    if (this.#shown.get(key) === html) {
      markStale(before, false);
      tellAccountsAgain(before);
      return;
    }
    const now = showPart(before, html, async (...cell) => this.#report.accountOf(...cell));
    if (!this.#made.has(key)) this.#made.set(key, before);
    this.#standing.set(key, now);
    this.#shown.set(key, html);
  }

  #bySight(): readonly [near: readonly LivePart[], far: readonly LivePart[]] {
    const { parts } = this.#report;
    const inSight = ({ key }: LivePart): boolean =>
      this.#elementsOf(key).some((element) => {
        const { top, bottom } = element.getBoundingClientRect();
        return bottom > 0 && top < innerHeight;
      });
    const near = new Set(parts.filter(inSight));
    return [[...near], parts.filter((part) => !near.has(part))];
  }

  /** Says under charts that cannot be drawn again what they show. */
  #noteStill(isChosen: boolean): void {
    for (const key of this.#report.still) {
      for (const element of this.#elementsOf(key)) {
        const said = element.querySelector('.note.still');
        if (!isChosen) said?.remove();
        if (!isChosen || said !== null) continue;
        const note = document.createElement('p');
        note.className = 'note still';
        note.textContent = choiceWords.stillChart;
        element.append(note);
      }
    }
  }
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

/** Resumes once the browser has drawn what was changed; at once where it draws nothing, as in a window out of sight. */
function nextFrame(): Promise<void> {
  if (document.hidden) return answerReader();
  return new Promise((resume) => requestAnimationFrame(() => void answerReader().then(resume)));
}

/** Resumes once the page has nothing else to do. */
function idle(): Promise<void> {
  return new Promise((resume) => {
    if ('requestIdleCallback' in window) requestIdleCallback(() => resume());
    else setTimeout(resume);
  });
}
