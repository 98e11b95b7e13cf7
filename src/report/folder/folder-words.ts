import { showNumber } from '../../notebook/shown.js';
import { writtenDays } from '../../record/written-numbers.js';

/** The fixed words of the page that lists a folder. */
export const folderWords = {
  title: 'Pages in this folder',
  about:
    'Each page stands by itself and carries its own numbers, methods and cautions. Fingerprints are the first twelve digits of a SHA-256: where two pages share one, they were made of the same notebook, the same records or by the same program.',
  none: 'No page of a notebook stands here.',
  titleIn: (title: string, file: string): string => `${title} (${file})`,
  for: 'For',
  asOf: 'Records up to',
  chosen: 'Made for a choice of records',
  notebook: 'Notebook (SHA-256)',
  records: 'Records (SHA-256)',
  program: 'Program (SHA-256)',
  rampbook: (version: string): string => `rampbook ${version}, `,
  changes: 'Against an earlier rendering',
  changesSince: (asOf: string, summary: string): string =>
    `Since the one of records up to ${writtenDays(asOf)}: ${summary}.`,
  changesLink: 'All that changed',
  changesPast: (page: string): string => `${page} tells of another rendering of this page.`,
  marks: 'Mind',
  otherRecords: 'Made of other records than its neighbours.',
  otherProgram: 'Written by another program than its neighbours.',
  mixed: (records: number, programs: number): string => {
    const kinds = [
      ...(records > 1 ? [`${showNumber(records, 'whole', '')} kinds of records`] : []),
      ...(programs > 1 ? [`${showNumber(programs, 'whole', '')} states of the program`] : []),
    ];
    return `These pages stand on ${kinds.join(' and ')}. Those that differ from their neighbours are marked; render them again before you set them side by side.`;
  },
  beside: 'Beside them',
} as const;
