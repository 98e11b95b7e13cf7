// Checks our statistics against worked cases made elsewhere: `npm run reference -- FILE [FILE...]`. The committed
// statistics.json and distributions.json were computed with R 4.2.2 and mpmath and cite their sources case by case.
import { readCases } from './cases.js';
import { check, type Difference } from './check.js';

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? 'nothing';
  return text.length > 300 ? `${text.slice(0, 300)}…` : text;
}

function describe({ id, key, expected, got }: Difference): string {
  return `${id} ${key}: expected ${shown(expected)}, got ${shown(got)}`;
}

const files = process.argv.slice(2);
if (files.length === 0) {
  process.stderr.write('npm run reference -- FILE [FILE...]\n');
  process.stderr.write('Each FILE holds worked cases as JSON, like tests/reference/statistics.json.\n');
  process.exit(2);
}

const tally = { held: 0, differ: 0, uncovered: 0 };
let faults = 0;
for (const file of files) {
  const read = readCases(file);
  if ('fault' in read) {
    process.stderr.write(`${read.fault}\n`);
    faults += 1;
    continue;
  }
  for (const one of read.cases) {
    const outcome = check(one);
    if (outcome.kind === 'held') tally.held += 1;
    else if (outcome.kind === 'not covered') {
      tally.uncovered += 1;
      process.stdout.write(`${one.id}: no method answers to ${one.method}\n`);
    } else {
      tally.differ += 1;
      for (const difference of outcome.differences) process.stdout.write(`${describe(difference)}\n`);
    }
  }
}
process.stdout.write(`${tally.held} held, ${tally.differ} differ, ${tally.uncovered} not covered\n`);
process.exitCode = tally.differ > 0 || faults > 0 ? 1 : 0;
