// npm run mutation -- NAME...: changes files below src/ piece by piece and counts how many changes the tests notice.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from '../command/run.js';
import { bundledTest } from './bundled-tests.js';
import { changesTo, copy, filesOf, takeCopy } from './changed-copy.js';
import { scoreOf, toldChange } from './score.js';
import { triedChanges } from './tried-changes.js';

const names = process.argv.slice(2);
if (names.length === 0) {
  console.error(
    "Name what to change below src/: a folder (statistic/proportion), its loose files ('formula/*'), a file.",
  );
  process.exit(2);
}

/** The tests that must notice: those of the folder itself, and for statistics the worked cases made elsewhere. */
function testsOf(name: string): readonly string[] {
  const folder = `tests/${name.split('/')[0]}`;
  const own = readdirSync(join(root, folder)).filter((file) => file.endsWith('.test.ts'));
  const paths = own.sort().map((file) => `${folder}/${file}`);
  return name.startsWith('statistic') ? [...paths, 'tests/reference/reference.test.ts'] : paths;
}

console.log('| src/ | changes | noticed | by running too long | not noticed | score |');
console.log('|---|---|---|---|---|---|');
const told: string[] = [];
for (const name of names) {
  takeCopy();
  const changes = await changesTo(name.split(',').flatMap(filesOf));
  const bundles = join(copy, 'bundles');
  mkdirSync(bundles);
  const files: string[] = [];
  for (const test of testsOf(name)) {
    const file = join(bundles, `${test.split('/').at(-1)}.cjs`);
    writeFileSync(file, await bundledTest(test));
    files.push(file);
  }
  const ids = changes.map(({ id }) => id);
  const outcomes = await triedChanges(files, ids, (done) => {
    if (done % 100 === 0) console.error(`${name}: ${done} of ${ids.length}`);
  });
  const { all, noticed, tooLong, missed, unrun } = scoreOf([...outcomes.values()]);
  const left = unrun === 0 ? missed : `${missed}, of which ${unrun} nothing runs`;
  const score = `${((100 * (all - missed)) / all).toFixed(1)} %`;
  console.log(`| ${[name, all, noticed, tooLong, left, score].join(' | ')} |`);
  for (const change of changes) {
    const outcome = outcomes.get(change.id)!;
    if (outcome !== 'missed' && outcome !== 'unrun') continue;
    const file = relative(copy, change.fileName);
    told.push(
      `${toldChange(file, readFileSync(join(root, file), 'utf8'), change)}${outcome === 'unrun' ? ' (not run)' : ''}`,
    );
  }
}
console.log(`\nNot noticed:\n${told.join('\n')}`);
