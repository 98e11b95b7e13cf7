import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Case, readCases } from './cases.js';
import { check } from './check.js';

// Computed with R 4.2.2 and partly read in the publications that each case cites.
const read = readCases(new URL('statistics.json', import.meta.url).pathname);
const cases: readonly Case[] = 'cases' in read ? read.cases : [];

const FIRST = /^(binom\.|poisson\.exact$|quantile\.|summary\.|surv\.kaplan_meier$)/;

describe('worked cases made elsewhere', () => {
  it('all of them were read', () => {
    expect(cases).toHaveLength(159);
    expect(new Set(cases.map((one) => one.method)).size).toBe(58);
  });

  it.each(cases.filter((one) => FIRST.test(one.method)).map((one) => [one.id, one] as const))('%s holds', (_, one) => {
    expect(check(one)).toEqual({ kind: 'held' });
  });

  it('no case differs', () => {
    expect(cases.map(check).filter((outcome) => outcome.kind === 'differs')).toEqual([]);
  });

  it('no case is left without a method of ours', () => {
    expect(cases.filter((one) => check(one).kind === 'not covered').map((one) => one.method)).toEqual([]);
  });

  it('a case with one wrong digit differs', () => {
    const one = cases.find(({ id }) => id === 'wilson-newcombe-81-263');
    if (one === undefined) throw new Error('the case is gone');
    const wrong = { ...one, expected: { ...one.expected, lower: 0.2552885 } };
    expect(check(wrong)).toMatchObject({ kind: 'differs', differences: [{ key: 'lower', expected: 0.2552885 }] });
  });
});

describe('cases answered by the stats and survival libraries of R 4.2.2 (made-with-r.R)', () => {
  const made = readCases(new URL('made-with-r.json', import.meta.url).pathname);
  const answered = 'cases' in made ? made.cases : [];

  it('all of them hold', () => {
    expect(answered).toHaveLength(120);
    expect(answered.map((one) => ({ id: one.id, ...check(one) })).filter(({ kind }) => kind !== 'held')).toEqual([]);
  });
});

const folder = mkdtempSync(join(tmpdir(), 'reference-'));

function run(...files: readonly string[]) {
  const script = new URL('run.ts', import.meta.url).pathname;
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', script, ...files], {
    encoding: 'utf8',
  });
  return { status, last: stdout.trim().split('\n').at(-1), stdout, stderr };
}

function written(name: string, text: string): string {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
}

describe('npm run reference', () => {
  const wilson = { id: 'a', method: 'binom.wilson', inputs: { x: 5, n: 10 }, rel_tol: 1e-8 };

  it('ends with the three counts, and fails when a case differs', () => {
    // 0.2366 and 0.7634 as in the committed file; the second case is wrong on purpose, the third is of no known method.
    const right = { ...wilson, expected: { lower: 0.236593090512564 } };
    const wrong = { ...wilson, id: 'b', expected: { lower: 0.3 } };
    const strange = { ...wilson, id: 'c', method: 'no.such', expected: {} };
    const { status, last, stdout } = run(written('mixed.json', JSON.stringify({ cases: [right, wrong, strange] })));
    expect(last).toBe('1 held, 1 differ, 1 not covered');
    expect(stdout).toContain('b lower: expected 0.3, got 0.2365');
    expect(status).toBe(1);
  });

  it('several files add up', () => {
    const file = written('right.json', JSON.stringify({ cases: [{ ...wilson, expected: { estimate: 0.5 } }] }));
    expect(run(file, file)).toMatchObject({ status: 0, last: '2 held, 0 differ, 0 not covered' });
  });

  it('a missing file, text that is not JSON, and another form are named, with exit 1', () => {
    const files = [join(folder, 'absent.json'), written('text.json', 'hello'), written('form.json', '[1]')];
    for (const file of files) {
      const { status, stderr } = run(file);
      expect(stderr).toContain(file);
      expect(status).toBe(1);
    }
  });

  it('no file at all is wrong use', () => expect(run().status).toBe(2));
});
