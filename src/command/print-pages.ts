import type { Problem } from '../problem/problem.js';
import { datedPdf } from './dated-pdf.js';
import { findBrowser } from './find-browser.js';
import { packedPdf } from './packed-pdf.js';
import { printPage } from './print-page.js';

/** A page made to be printed, and the name of its PDF. */
export interface ToPrint {
  readonly name: string;
  readonly html: string;
}

/** What printing needs of the command. */
export interface Printing {
  /** The moment up to which the records tell, in milliseconds since 1970; dates the PDF where the surroundings do not. */
  readonly asOf: number | null;
  readonly write: (name: string, pdf: Uint8Array) => void;
  readonly show: (name: string, share: number) => void;
}

/** Prints pages one after the other; what kept any from being printed. Without pages no browser is looked for. */
export async function printPages(pages: readonly ToPrint[], { asOf, write, show }: Printing): Promise<Problem[]> {
  if (pages.length === 0) return [];
  const found = findBrowser(process.env);
  if ('problem' in found) return [found.problem];
  const problems: Problem[] = [];
  const moment = sourceDate(process.env.SOURCE_DATE_EPOCH) ?? asOf;
  for (const [at, { name, html }] of pages.entries()) {
    show(name, at / pages.length);
    const printed = await printPage(html, found.browser, name);
    if ('problem' in printed) problems.push(printed.problem);
    else write(name, packedPdf(moment === null ? printed.pdf : datedPdf(printed.pdf, moment)));
  }
  return problems;
}

/** Seconds since 1970, as https://reproducible-builds.org/specs/source-date-epoch/ has them, in milliseconds. */
function sourceDate(seconds: string | undefined): number | null {
  return seconds !== undefined && /^\d{1,11}$/.test(seconds) ? Number(seconds) * 1000 : null;
}
