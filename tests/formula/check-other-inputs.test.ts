import { describe, expect, test } from 'vitest';
import { askNumber, environmentOf, problemsOf, read, valueOfFormula } from './ask.js';
import { byStation, environment, input, known, told } from './check-book.js';
import { smallBook } from './small-book.js';

// What is expected follows from the rules of the language: a mistake is told once, at its place.

describe('a figure with other inputs', () => {
  const made = new Map([
    ['cost', { formula: read('wage * 10'), needs: ['wage'] }],
    ['shown', { formula: read('cost + wage * 2'), needs: ['cost', 'wage'] }],
    ['since', { formula: read('count(inspections where day >= opening)'), needs: ['opening'] }],
    ['chosen', { formula: read('inspections where minutes > limit'), needs: ['limit'] }],
    ['filled', { formula: null, needs: ['wage'] }],
    ['on_sheet', { formula: read('wage * 3'), needs: ['filled', 'wage'] }],
    ['span', { formula: read('limit * 2'), needs: ['limit'] }],
    ['after', { formula: read('opening + 1'), needs: ['opening'] }],
    ['last', { formula: read('latest(day of inspections where day <= opening)'), needs: ['opening'] }],
    ['counted', { formula: read('count(inspections where extent is how)'), needs: ['how'] }],
    ['again', { formula: read('1 + (cost with wage as 2)'), needs: ['cost', 'wage'] }],
  ]);
  const values = new Map(known)
    .set('thirty', input('30', 'minutes'))
    .set('how', input('full'))
    .set('cots', input('1'))
    .set('filed', input('1'));
  for (const name of ['cost', 'shown', 'since', 'chosen', 'on_sheet', 'counted', 'span', 'after', 'last']) {
    values.set(name, valueOfFormula(made.get(name)!.formula!.text, environmentOf(smallBook, values)));
  }
  values.set('filled', byStation).set('again', values.get('cost')!);
  const inputs = new Set(['wage', 'limit', 'opening', 'place', 'how']);
  const withFigures = { ...environmentOf(smallBook, values), definitions: { inputs, made, values } };

  test('is made again from all that the inputs reach, in the input’s unit', () => {
    const asked = (text: string) => askNumber(text, withFigures);
    expect(asked('cost with wage as 30')).toMatchObject({ value: 300, unit: 'dollars an hour' });
    expect(asked('shown with wage as 30').value).toBe(360);
    expect(asked('cost with wage as (wage * 2)').value).toBe(400);
    expect(asked('cost with wage as -1').value).toBe(-10);
    expect(asked('shown').value).toBe(240);
    // Inspections on 2025-05-02: three, of which the last has no day; on the day before four.
    expect(asked('since with opening as "2025-05-02"').value).toBe(3);
    expect(asked('since with opening as (opening + 1)').value).toBe(3);
    expect(asked('since').value).toBe(7);
    // 30 minutes are half an hour, and days since 1970-01-01 of 2025-06-02 are 20,241 (`date -u -d 2025-06-02 +%s` / 86,400).
    expect(asked('span with limit as thirty')).toMatchObject({ value: 1, unit: 'hours' });
    expect(valueOfFormula('after with opening as "2025-06-01"', withFigures)).toMatchObject({
      kind: 'date',
      day: 20241,
    });
    // Seven were full; the other was a paper check.
    expect([asked('counted').value, asked('counted with how as "paper check"').value]).toEqual([7, 1]);
  });

  test('that is refused says nothing more', () => {
    const codes = (text: string, where = withFigures as typeof environment) =>
      problemsOf(text, where).map(({ code }) => code);
    expect(codes('(cost with limit as 2) is "a"')).toEqual(['no-effect']);
    expect(codes('(on_sheet with wage as 2) is "a"')).toEqual(['not-again']);
    expect(codes('cost with wage as 3 with wge as 4')).toEqual(['not-an-input']);
    expect(codes('wage with wage as 3', environment)).toEqual(['not-a-figure', 'not-an-input']);
    expect(told('cots with wage as 3', withFigures as typeof environment)[0]![3]).toBe('Did you mean `cost`?');
    expect(told('filed with wage as 3', withFigures as typeof environment)[0]![3]).toBe(
      'Make the formula a figure and name that.',
    );
  });

  test('a count of its records says with which inputs it was made', () => {
    const value = valueOfFormula('since with opening as "2025-05-02"', withFigures);
    if (value.kind !== 'number') throw new Error(value.kind);
    const last = valueOfFormula('last with opening as "2025-05-02"', withFigures);
    expect(last).toMatchObject({
      kind: 'date',
      accounts: [{ description: expect.stringMatching(/, with opening as "2025-05-02"$/) }],
    });
    expect(value.accounts.map(({ description }) => description.endsWith(', with opening as "2025-05-02"'))).toEqual([
      true,
    ]);
  });

  test.each([
    [
      'cost with wage as "x"',
      'wrong-kind',
      'x',
      'a number in dollars an hour, not a text',
      'Give the input the same kind of value as it has.',
    ],
    ['cost with wage as limit', 'units-differ', 'limit', expect.any(String), expect.any(String)],
    [
      'since with opening as "2025-02-30"',
      'not-a-date',
      '2025-02-30',
      'a date that the calendar has',
      expect.any(String),
    ],
    [
      'since with opening as 3',
      'wrong-kind',
      '3',
      'a date, because that is what it is compared with',
      'Compare like with like.',
    ],
    [
      'cost with opening as "2025-05-02"',
      'no-effect',
      'opening',
      'an input that cost stands on',
      'Leave it out: cost is the same whatever opening is.',
    ],
    [
      'cost with wage as 3 with limit as 2',
      'no-effect',
      'limit',
      'an input that cost stands on',
      'Leave it out: cost is the same whatever limit is.',
    ],
    [
      'wage with wage as 3',
      'not-a-figure',
      'wage',
      'a figure of this notebook before `with`',
      'Make the formula a figure and name that.',
    ],
    [
      'chosen with limit as 2',
      'not-a-figure',
      'chosen',
      'a figure of this notebook before `with`',
      'Count or sum its rows in a figure, and name that.',
    ],
    [
      'filled with wage as 2',
      'not-a-figure',
      'filled',
      'a figure of this notebook before `with`',
      'Count or sum its rows in a figure, and name that.',
    ],
    ['cost with cost as 3', 'not-an-input', 'cost', 'an input after `with`', 'Declare it in a table of inputs.'],
    ['cost with wge as 3', 'not-an-input', 'wge', 'an input after `with`', 'Did you mean `wage`?'],
    [
      'on_sheet with wage as 3',
      'not-again',
      'on_sheet',
      'a figure that stands on no sheet: filled is filled once',
      'Write its formula without it.',
    ],
    [
      'again with wage as 3',
      'not-again',
      'again',
      'a figure that is made without `with`, unlike again',
      'Write its formula without it.',
    ],
    ['nothing_here with wage as 3', 'unknown-name', 'nothing_here', expect.any(String), expect.any(String)],
    ['cost with wage as nothing_here', 'unknown-name', 'nothing_here', expect.any(String), expect.any(String)],
  ])('%s is told as %s', (text, ...expected) => {
    expect(told(text, withFigures as typeof environment)).toEqual([expected]);
  });
});
