// How much work an edit of one input takes until the watched page has what changed: CPU time of this process, in
// milliseconds, the median of warm edits. Words: a store of some 100,000 inspections of the invented basin.
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { DeskSeason } from '../../src/command/desk-season.js';
import { DeskSession } from '../../src/command/desk-session.js';
import { deskState, reportPartsOf } from '../../src/command/desk-state-of.js';
import { median } from './measured-run.js';

const notebooks = fileURLToPath(new URL('../../notebooks', import.meta.url));

/** Inputs from small to full reach, with the values that they are given in turn. */
const edits: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  season: { release_target: ['81', '82', '83'], last_season: ['2023', '2025'], this_season: ['2024', '2023'] },
  'training-focus': { last_season: ['2023', '2022'], first_season: ['2024', '2025'], this_season: ['2024', '2023'] },
  'budget-request': {
    running: ['11', '13'],
    wage: ['27', '28'],
    extra_hours: ['510', '520'],
    reached: ['85', '84'],
    this_season: ['2024', '2023'],
  },
};

const opened = await DeskSeason.open(process.argv[2] ?? 'store');
if ('problems' in opened) throw new Error(JSON.stringify(opened.problems));
const season = opened;
const folder = mkdtempSync(join(tmpdir(), 'rampbook-edits-'));

function spent(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function edited(text: string, input: string, value: string): string {
  const found = text.replace(new RegExp(`(\\n\\| ${input} +\\| *)[\\d.,]+`), (_, before: string) => before + value);
  if (found === text) throw new Error(`nothing was changed of ${input}`);
  return found;
}

console.log('| notebook | input | CPU ms |');
console.log('|---|---|---|');
try {
  for (const [name, inputs] of Object.entries(edits)) {
    const path = join(folder, `${name}.md`);
    copyFileSync(join(notebooks, `${name}.md`), path);
    const text = readFileSync(path, 'utf8');
    const session = new DeskSession(path, `${name}.md`, season);
    const marks: Record<string, string> = {};
    const show = (saved: string): number => {
      writeFileSync(path, saved);
      const from = spent();
      session.look();
      session.follow();
      const { open } = session;
      const nothing = { refused: null, line: null };
      const having = { marks, namesMark: '', version: '' };
      const state = deskState(session, open, reportPartsOf(session, open), nothing, having, false);
      JSON.stringify(state);
      for (const part of state.parts) marks[part.key] = part.mark;
      return spent() - from;
    };
    // What nobody asks for in so many turns is let go, so that no value is remembered from the round before.
    const forget = (): void => {
      for (let turn = 0; turn < 14; turn++) show(`${text}\nTurn ${turn}.\n`);
    };
    for (const [input, values] of Object.entries(inputs)) {
      const times: number[] = [];
      for (let round = 0; round < 3; round++) {
        forget();
        for (const value of values) {
          const time = show(edited(text, input, value));
          if (round > 0) times.push(time);
          show(text);
        }
      }
      console.log(`| ${name} | ${input} | ${Math.round(median(times))} |`);
    }
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
