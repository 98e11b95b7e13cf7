import type { PageResults } from '../../../src/report/results/page-results.js';

/** A page's results small enough to compare by eye: a rate of records, a cost by an input, and a sheet of two stations. */
export const earlier: PageResults = {
  form: 'rampbook page 1',
  name: 'season',
  title: 'Season',
  audience: 'everybody',
  asOf: '2024-11-30',
  headline: 'Of 100, 4 were.',
  program: { version: '0.1.0', fingerprint: 'a'.repeat(64) },
  notebook: 'b'.repeat(64),
  records: 'c'.repeat(64),
  chosen: [],
  seed: 1,
  resamples: 2000,
  files: [
    { file: 'forms.csv', fingerprint: '1111111111111111', read: 101, kept: 100, setAside: 1 },
    { file: 'stations.csv', fingerprint: '2222222222222222', read: 2, kept: 2, setAside: 0 },
  ],
  inputs: [
    { name: 'wage', source: 'payroll', value: 20, unit: 'dollars an hour' },
    { name: 'season', source: '', value: 2024, unit: 'year' },
  ],
  selections: [
    { name: 'full', formula: 'inspections where season is season', table: 'inspections', rows: 100, needs: ['season'] },
  ],
  figures: [
    {
      name: 'rate',
      formula: 'rate(found, count(full))',
      shownAs: 'percent',
      value: 0.04,
      interval: { low: 0.02, high: 0.1, confidence: 0.95, sides: 'two' },
      numerator: 4,
      denominator: 100,
      needs: ['full'],
      records: ['inspections'],
    },
    {
      name: 'cost',
      formula: 'wage * 10',
      shownAs: 'dollars',
      value: 200,
      unit: 'dollars',
      needs: ['wage'],
      records: [],
    },
    {
      name: 'twice',
      formula: 'cost * 2',
      shownAs: 'dollars',
      value: 400,
      unit: 'dollars',
      needs: ['cost'],
      records: [],
    },
  ],
  sheets: [
    {
      name: 'by_station',
      sentence: 'Sheet by_station: each station of full.',
      needs: ['full'],
      columns: [
        { name: 'station', key: true, formula: '', shownAs: '', unit: '' },
        { name: 'rate', key: false, formula: 'rate(found, count())', shownAs: 'percent', unit: '' },
      ],
      count: 2,
      rows: [
        ['Alder', [0.02, 0.01, 0.08]],
        ['Birch', [0.06, 0.03, 0.12]],
      ],
      fingerprint: '3333333333333333',
    },
  ],
};

/** The same with one figure otherwise. */
export function withFigure(name: string, change: Partial<PageResults['figures'][number]>, page = earlier): PageResults {
  return { ...page, figures: page.figures.map((figure) => (figure.name === name ? { ...figure, ...change } : figure)) };
}
