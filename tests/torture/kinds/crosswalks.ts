import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseDocument } from 'yaml';
import { importExports } from '../../../src/intake/import-exports.js';
import { readCrosswalk } from '../../../src/intake/read-crosswalk.js';
import { root } from '../../command/run.js';
import { inFolder, testKey } from '../../intake/small-import.js';
import { plantedCrosswalk, plantedFiles } from '../planted-season.js';
import { hostilePieces, spoilText } from '../spoil.js';
import { hold, type Kind, oneOf } from '../trial.js';

const shipped = ['lakes', 'roads', 'office'].map((name) =>
  readFileSync(join(root, `datasets/quillwater/${name}.crosswalk.yaml`), 'utf8'),
);
const pieces = [
  ...hostilePieces,
  ...[
    '&a',
    '*a',
    '!!binary',
    '!!js/function',
    '<<: *a',
    '- - - -',
    '? ?',
    '{',
    '}',
    '[',
    ']',
    ': ',
    '|',
    '>',
    '---',
    '...',
  ],
  ...[
    'field',
    'columns',
    'private',
    'hash',
    'drop',
    'fold',
    'codes',
    'pattern',
    'files',
    'table',
    'checks',
    '*.csv',
    '../x',
  ],
  ...['semicolon', 'utf-16le', 'header_line', '2', '99999999999', 'several', 'combine', 'constants', 'also', 'rules'],
  ...['prefix', 'completes', 'other files', 'minus', 'partly_blank', 'next_day_if_before', 'wash-apart'],
];

/** Aliases that stand for aliases, nesting without end, or many keys: what makes readers of YAML run out of memory. */
function bomb(kind: number): string {
  if (kind === 0) {
    const levels = Array.from({ length: 40 }, (_, at) => `a${at + 1}: &a${at + 1} [${`*a${at}, `.repeat(10)}]`);
    return ['a0: &a0 [x, x]', ...levels].join('\n');
  }
  if (kind === 1) return `files: ${'['.repeat(20_000)}`;
  if (kind === 2) return `files: ${'{a: '.repeat(3000)}1${'}'.repeat(3000)}`;
  return `files:\n${Array.from({ length: 5000 }, (_, at) => `  k${at}: { files: [x], table: checks }`).join('\n')}`;
}

/** Crosswalks with lines and words spoilt, and YAML bombs; what can still be read imports a small season. */
export const crosswalksKind: Kind = {
  name: 'crosswalks',
  counted: 'rows',
  patience: 60,
  pace: 30,
  run: async (random) => {
    const isBomb = random.below(60) === 0;
    const sound = random.below(4) === 0 ? oneOf(random, shipped) : plantedCrosswalk;
    const text = isBomb ? bomb(random.below(4)) : spoilText(sound, random, pieces, 1 + random.below(2));
    const { crosswalk, problems } = readCrosswalk('c.yaml', text);
    hold(crosswalk !== null || problems.length > 0, () => 'neither a crosswalk nor a problem');
    const lines = text.split('\n').length;
    for (const { place, remedy } of problems) {
      hold(
        remedy !== '' && place.line >= 0 && place.line <= lines,
        () => `a problem without a place: ${JSON.stringify(place)}`,
      );
    }
    if (sound !== plantedCrosswalk || isBomb)
      return { ended: problems.length > 0 ? 'refused' : 'taken in', accounted: 0 };
    const files = Object.fromEntries([...plantedFiles(random, 0)].map(([name, file]) => [name, file.text]));
    return inFolder({ ...files, 'c.yaml': text }, async (folder) => {
      const result = await importExports({
        crosswalks: [join(folder, 'c.yaml')],
        from: folder,
        key: testKey,
        progress: () => {},
      });
      let accounted = 0;
      for (const { file, read, kept, setAside, leftOut = 0 } of result.sum.files) {
        hold(read === kept + setAside + leftOut, () => `${file}: ${read} is not ${kept} + ${setAside} + ${leftOut}`);
        accounted += read;
      }
      const isRefused = result.problems.length > 0;
      hold(isRefused || accounted > 0 || parseDocument(text).errors.length === 0, () => 'what is no YAML was taken in');
      return { ended: isRefused ? 'refused' : 'taken in', accounted };
    });
  },
};
