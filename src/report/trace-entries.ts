import { modelsOf, type Trace, type TracedCount } from '../notebook/trace.js';
import { inWords } from './anchor.js';
import type { Entry } from './definition-list.js';
import { inputText } from './value-in-prose.js';
import { words } from './words.js';

/** How many stretches of lines of one file stand on the page; the trace command lists the rest. */
const mostStretches = 5;

/** What a figure stands on: inputs with their source, other names, the records counted by file and line, and those left out and why. */
export function traceEntries({ inputs, standsOn, counts }: Trace, most = mostStretches): Entry[] {
  const names = standsOn.map((other) => inWords(other.name));
  return [
    ...inputs.map(({ name, value, unit, source }): Entry => {
      return [words.input, words.inputOf(inWords(name), inputText(value, unit), source)];
    }),
    ...(names.length === 0 ? [] : [[words.standsOn, names.join(', ')] as const]),
    ...modelsOf(counts).map((model): Entry => [words.madeBy, model]),
    ...counts.flatMap((count) => countEntries(count, most)),
  ];
}

function countEntries(count: TracedCount, most: number): Entry[] {
  const { table, description, counted, considered, model, leftOut, files, setAside } = count;
  if (model !== null && considered === 0) return [];
  const setAsideRows = setAside.reduce((rows, file) => rows + file.rows, 0);
  const left = (['otherwise', 'unknown', 'missing'] as const)
    .filter((why) => leftOut[why] > 0)
    .map((why) => words.leftOutRows(leftOut[why], words.leftOutOf[why]));
  return [
    [
      model === null ? words.recordsCounted : words.recordsUsed,
      words.countedOf(counted, considered, inWords(table), description),
    ],
    ...(left.length === 0 ? [] : [[words.leftOut, left.join('; ')] as const]),
    ...files.map(({ file, rows, stretches, first }): Entry => {
      const more = stretches - most;
      // Cells are many on a page, and the command is named once beside them.
      const rest = most < mostStretches ? words.moreStretches(more) : words.moreLines(more);
      const shown = first(most).join(', ') + (more > 0 ? rest : '');
      return [words.fromFile, words.fileLines(file, rows) + shown];
    }),
    ...(setAside.length === 0 ? [] : [[words.setAsideThere, words.setAsideOf(setAsideRows, setAside.length)] as const]),
  ];
}
