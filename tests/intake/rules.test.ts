import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { faultCodes } from '../../src/intake/fault.js';
import { readCrosswalk } from '../../src/intake/read-crosswalk.js';
import { ruleOf, rules } from '../../src/intake/rules/rules.js';
import { asideOf, importSmall, notesOf, stationCrosswalk, stationFiles } from './small-import.js';

const sourceOf = (folder: string) => {
  const home = new URL(`../../src/${folder}`, import.meta.url).pathname;
  const paths = readdirSync(home, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.ts'));
  return paths.map((path) => readFileSync(join(home, path), 'utf8')).join('\n');
};

describe('the table of rules', () => {
  test('has every code once, with what it means and what to do', () => {
    expect(new Set(rules.map(({ code }) => code)).size).toBe(rules.length);
    for (const { code, meaning, remedy } of rules) {
      expect(meaning, code).toMatch(/^[^A-Z].*[^.]$/u);
      expect(remedy, code).toMatch(/^[A-Z].*\.$/u);
    }
  });

  test('has every code that the intake and the store can report', () => {
    const text = sourceOf('intake') + sourceOf('store');
    const plain = [
      ...text.matchAll(
        /(?:\bcode: |\b(?:stop|stopped|damaged|refusal|sayingOf|SourceError)\(\s*)'([a-z]+(?:-[a-z0-9]+)+)'/gu,
      ),
    ].map(([, code]) => code!);
    const ofCrosswalks = [...text.matchAll(/\bcomplain(?:OfName)?\(\s*'([a-z-]+)'/gu)].map(
      ([, code]) => `crosswalk-${code}`,
    );
    const met = new Set([...plain, ...ofCrosswalks, ...faultCodes.filter((code) => code !== '')]);
    expect(met.size).toBeGreaterThan(50);
    expect([...met].filter((code) => ruleOf(code) === null).sort()).toEqual([]);
  });
});

const withRules = (text: string) => stationCrosswalk.replace('files:', `rules:\n${text}\nfiles:`);
const sound = '1,L1,2025-05-01 08:00,2025-05-01 08:10,M,AB12,C,N';

test('a rule set otherwise follows its crosswalk, and the account tells what was set and why', async () => {
  const crosswalk = withRules(
    '  one-side-only: { severity: sets aside, because: the form asks for both }\n' +
      '  finding-without-fouling: { severity: not checked, because: mud is written down on clean parts }',
  );
  const result = await importSmall(crosswalk, {
    ...stationFiles({
      inspections: [sound],
      checks: ['1,waterline,port,clean,mud', '1,bunks,port,clean,', '1,bunks,starboard,clean,'],
    }),
  });
  expect(asideOf(result)).toEqual(['2 side one-side-only']);
  expect(notesOf(result)).toEqual([]);
  expect(result.sum.files.map(({ read, kept, setAside }) => [read, kept, setAside])).toContainEqual([3, 2, 1]);
  expect(result.sum.ruleChanges).toEqual([
    {
      crosswalk: 'station',
      code: 'one-side-only',
      usual: 'notes',
      set: 'sets aside',
      limits: '',
      because: 'the form asks for both',
    },
    {
      crosswalk: 'station',
      code: 'finding-without-fouling',
      usual: 'notes',
      set: 'not checked',
      limits: '',
      because: 'mud is written down on clean parts',
    },
  ]);
});

test('an inspection set aside for sense takes its looks along', async () => {
  const crosswalk = withRules('  outcome-without-part: { severity: sets aside, because: the part must be named }');
  const result = await importSmall(
    crosswalk,
    stationFiles({
      inspections: ['1,L1,2025-05-01 08:00,,M,AB12,I,N', '2,L1,2025-05-01 09:00,,M,AB12,C,N'],
      checks: ['1,bilge,none,clean,', '2,bilge,none,clean,'],
    }),
  );
  expect(asideOf(result)).toEqual(['2 result outcome-without-part', '2 insp parent-set-aside']);
  expect(result.records.checks.rowCount).toBe(1);
});

test('limits of over-long times are declared, and shown with the rule', async () => {
  const rows = stationFiles({
    inspections: ['1,L1,2025-05-01 08:00,2025-05-01 21:00,M,,C,N', '2,L1,2025-05-01 08:00,2025-05-02 00:01,M,,C,N'],
  });
  const longer = withRules('  over-long: { inspection_hours: 16, because: border stations strip craft }');
  const result = await importSmall(longer, rows);
  expect(asideOf(result)).toEqual(['3 end over-long']);
  expect(result.setAside[0]!.reason).toContain('16 hours');
  expect(result.sum.ruleChanges![0]).toMatchObject({ set: 'sets aside', limits: 'an inspection at most 16 hours' });
});

test('a rule is set with a reason only, and only where a row can be kept', () => {
  const mistakes = (text: string) =>
    readCrosswalk('c.yaml', withRules(text)).problems.map(({ code, seen }) => `${code} ${seen}`);
  expect(mistakes('  one-side-only: { severity: sets aside }')).toEqual(['crosswalk-missing-setting nothing']);
  expect(mistakes('  one-side-only: { severity: stops, because: so }')).toEqual(['crosswalk-wrong-value stops']);
  expect(mistakes('  not-a-number: { severity: notes, because: so }')).toEqual(['crosswalk-wrong-value not-a-number']);
  expect(mistakes('  one-side-onyl: { severity: notes, because: so }')).toEqual([
    'crosswalk-unknown-rule one-side-onyl',
  ]);
  expect(mistakes('  over-long: { inspection_hours: 0, because: so }')).toEqual(['crosswalk-wrong-value 0']);
  expect(mistakes('  over-long: { inspection_hours: 16, because: so }')).toEqual([]);
});
