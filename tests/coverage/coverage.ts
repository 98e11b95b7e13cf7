// How often the 95 % intervals of the demo's measures hold the parameters that made the demo: `npm run coverage`. Writes
// the table kept as last-table.md. `npm run coverage -- SEASONS SCALE` for another number or size of seasons.
import { writeFileSync } from 'node:fs';
import { tally } from './tally.js';

const [seasons = 200, scale = 0.3] = process.argv.slice(2).map(Number);
const started = Date.now();
const seeds = Array.from({ length: seasons }, (_, at) => at + 1);
const found = tally(seeds, scale, (seed) => {
  if (seed % 20 === 0) process.stderr.write(`${seed} seasons, ${Math.round((Date.now() - started) / 1000)} s\n`);
});
const shown = (value: number): string => value.toPrecision(4);
const rows = found.map(
  ({ measure, intervals, covered, meanTruth, meanValue }) =>
    `| ${measure} | ${intervals} | ${covered} | ${((100 * covered) / intervals).toFixed(1)} % | ${shown(meanTruth)} | ${shown(meanValue)} |`,
);
const table = `# Coverage of the demo's truth

How often 95 % intervals of findings held the true value over ${seasons} seeded seasons (seeds 1 to ${seasons}) of the invented
Quillwater Basin at ${scale} of the demo's size, with nothing spoilt. Written by \`npm run coverage\`; what each true value is,
exactly, stands in \`true-values.ts\`.

| measure | intervals | held the truth | share | mean truth | mean estimate |
|---|---|---|---|---|---|
${rows.join('\n')}

- *Interception, arriving*: the mean probability, over the full inspections made, that an arriving or roadside craft of its
  setting and month is intercepted. Station-days are rich or poor by a gamma law, so trials of one day hang together; the
  unclustered interval stands beside for comparison and is not what the reports show first.
- *Interception, leaving*: the mean probability that mussels are found on a craft leaving the positive lake, given its build,
  parts and mooring, by the exact expectation of the walk.
- *Share of fouled craft* and *fouled per look*: expected craft found fouled on a part by expected fouled craft, and by
  expected looks at the part. Parts other than the three named are pooled; seasons in which nobody carries or looks at one
  say nothing of it.
- *Median wait*: the median of the mixture of the stations' log-normal waits, in written minutes. Craft that leave unwashed
  are competing endings; those still waiting at the cut-off are followed until then.
`;
writeFileSync(new URL('last-table.md', import.meta.url), table);
process.stdout.write(table);
