import { rmSync } from 'node:fs';
import { afterAll, beforeAll, describe } from 'vitest';
import { writeExports } from '../../datasets/quillwater/generate.js';
import { newFolder } from '../command/run.js';
import { type Ask, recountedRecords } from './records.js';
import { recountBudget } from './recount-budget.js';
import { recountForms } from './recount-forms.js';
import { recountFouled } from './recount-fouled.js';
import { recountInspected } from './recount-inspected.js';
import { recountIntake } from './recount-intake.js';
import { recountLooks } from './recount-looks.js';
import { recountResampled } from './recount-resampled.js';
import { recountWaits } from './recount-waits.js';

/**
 * The demo's numbers from outside: from the raw exports to the committed pages by another program. Nothing of `src/` takes part.
 * The rules stand in `sql/`, the statistics in `textbook.ts` and `survival.ts`, written by hand from the crosswalks, from what the
 * program prints of its rules and methods, and from the papers named there. Which craft carry which part, and how a wash that was
 * not seen to end is followed, were read in the sources: what is wrong in those alone would be wrong here too.
 */
describe('the demo, recounted from its raw exports', () => {
  const exports = newFolder();
  let ask: Ask;
  beforeAll(async () => {
    await writeExports(exports);
    ask = await recountedRecords(exports);
  });
  afterAll(() => rmSync(exports, { recursive: true, force: true }));
  const asked: Ask = (question) => ask(question);
  recountIntake(asked);
  recountForms(asked);
  recountInspected(asked);
  recountFouled(asked);
  recountLooks(asked);
  recountWaits(asked);
  recountBudget(asked);
  recountResampled(asked);
});
