import { readSeason } from '../../../src/report/carried/carried-season.js';
import { LiveReport } from '../../../src/report/carried/live-report.js';

/** A choice as it is handed to another process. */
export interface HandedChoice {
  readonly only: readonly (readonly [string, string | null])[];
  readonly inputs: readonly (readonly [string, string])[];
}

/**
 * What the bundle of a page gives for choices: every selection, figure and sheet as JSON, and the page's parts in HTML but for
 * its charts, which need a document. Meant to be bundled as pages are, and run where no text can become code.
 */
function countOutside(bytes: Uint8Array, choices: readonly HandedChoice[]): readonly unknown[] {
  const report = new LiveReport(readSeason(bytes));
  return choices.map(({ only, inputs }) => {
    const choice = { only: new Map(only), inputs: new Map(inputs) };
    report.choose(choice);
    for (const part of report.parts) report.count(part);
    const { selections, figures, sheets } = report.workings.notebook;
    const methods = report.methods();
    const told = [...sheets.values()].map(({ name, columns }) =>
      columns.map((column) => report.accountOf(name, column.name, 0)),
    );
    const texts = report.parts.filter(({ key }) => !report.isChart(key)).map((part) => report.render(part, methods));
    return {
      selections: [...selections],
      figures: [...figures],
      sheets: [...sheets],
      accounts: told.flat().filter((account) => account !== null).length,
      letters: texts.reduce((sum, text) => sum + text.length, 0),
    };
  });
}

Object.assign(globalThis, { countOutside });
