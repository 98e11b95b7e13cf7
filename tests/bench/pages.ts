// What finished pages take in a browser, beside what is wanted: `npx tsx tests/bench/pages.ts FOLDER`, a folder of the
// demo's pages. Prints Markdown.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { browserHere, launch } from '../browser/open-page.js';
import { type Change, type PageFigures, pageFigures } from './page-figures.js';

const stations = ['heron-point', 'fennick-dam', 'quill-marina', 'stag-pass', 'old-ferry'];
const byStation = (scrolled: number, said: string): Change => ({
  said: `a station, ${said}`,
  name: 'only.station',
  values: stations,
  scrolled,
});
const byInput = (said: string, name: string, values: readonly string[]): Change => ({
  said,
  name: `with.${name}`,
  values,
  scrolled: 0,
});

const changesOf: Readonly<Record<string, readonly Change[]>> = {
  season: [
    byStation(0, 'at the head'),
    byStation(0.4, 'further down'),
    byInput('an input, `release_target`', 'release_target', ['60', '61', '62', '63', '64']),
  ],
  'training-focus': [byStation(0, 'at the head'), byStation(0.4, 'further down')],
  'budget-request': [byInput('an input, `wage`', 'wage', ['27', '28', '29', '30', '31'])],
  'board-brief': [byInput('an input, `wage`', 'wage', ['27', '28', '29', '30', '31'])],
};

/** Lines of Markdown: how long pages take to be ready and to follow a change, and what they weigh. */
export async function pageLines(folder: string): Promise<readonly string[]> {
  if (!browserHere()) return ['No browser is here: pages were not measured.'];
  const browser = await launch();
  const measured: [string, PageFigures][] = [];
  try {
    for (const [name, changes] of Object.entries(changesOf)) {
      const file = join(folder, `${name}.html`);
      if (existsSync(file)) measured.push([name, await pageFigures(browser, file, changes)]);
    }
  } finally {
    await browser.close();
  }
  const ms = (number: number): string => String(Math.round(number));
  const kB = (bytes: number): string => String(Math.round(bytes / 1000));
  return [
    '| page | kB | kB without rows (wanted: under 1,000) | ready, ms (wanted: under 500) | counts again, ms |',
    '|---|---|---|---|---|',
    ...measured.map(
      ([name, { bytes, bytesWithoutRows, ready, counts }]) =>
        `| ${name} | ${kB(bytes)} | ${kB(bytesWithoutRows)} | ${ms(ready)} | ${ms(counts)} |`,
    ),
    '',
    '| page | change | in sight, ms (wanted: under 50) | whole page, ms | the first time: in sight | whole page |',
    '|---|---|---|---|---|---|',
    ...measured.flatMap(([name, { changes }]) =>
      changes.map(({ said, first, later }) => {
        const times = [later.sight, later.whole, first.sight, first.whole].map(ms).join(' | ');
        return `| ${name} | ${said} | ${times} |`;
      }),
    ),
  ];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  console.log((await pageLines(process.argv[2] ?? 'reports')).join('\n'));
}
