import { describe, expect, test } from 'vitest';
import { checkFormula } from '../../src/formula/check.js';
import { kindOfValue } from '../../src/formula/value/kind-of-value.js';
import { askNumber, problemsOf, read } from './ask.js';
import { environment, input, known, told, withVisits } from './check-book.js';

// What is expected follows from the rules of the language: a mistake is told once, at its place.

describe('arithmetic', () => {
  test('of rows asks for their count, and of anything else for numbers', () => {
    const count = 'Count the rows with count(…).';
    const numbersOnly = 'Calculate with numbers; two dates can be subtracted, and days added to a date.';
    expect(told('inspections + 1')).toEqual([
      ['wrong-kind', 'inspections', 'a number, not rows of inspections', count],
    ]);
    expect(told('2 * by_station')).toEqual([['wrong-kind', 'by_station', 'a number, not the sheet by_station', count]]);
    expect(told('"a" + 1')).toEqual([['wrong-kind', 'a', 'a number, not a text', numbersOnly]]);
    expect(told('-"a"')).toEqual([['wrong-kind', 'a', 'a number, not a text', numbersOnly]]);
    expect(told('-(1 < 2)')[0]!.slice(2)).toEqual(['a number, not true or false', numbersOnly]);
  });

  test('on what has a problem of its own says nothing more', () => {
    for (const text of [
      '-nothing_here',
      'nothing_here + "a"',
      '"a" + nothing_here',
      'opening + nothing_here',
      'nothing_here * opening',
    ]) {
      expect(problemsOf(text, environment).map(({ code }) => code)).toEqual(['unknown-name']);
    }
  });

  test('of dates: apart they are days and moments minutes, and nothing else can be made of two', () => {
    const kindOf = (text: string) => {
      const of = read(`mean((${text}) of visits)`);
      const kinds = new Map([...known].map(([name, value]) => [name, kindOfValue(value)]));
      return checkFormula(of, { book: withVisits, known: kinds, sheet: null });
    };
    expect(kindOf('over - began')).toEqual({ kind: kindOfValue(input('1', 'minutes')), problems: [] });
    expect(kindOf('due - opening')).toEqual({ kind: kindOfValue(input('1', 'days')), problems: [] });
    expect(askNumber('mean((over - began) of visits)', environment).unit).toBe('minutes');
    expect(askNumber('mean((due - opening) of visits)', environment).unit).toBe('days');
    const remedy = 'Subtract one from the other, or add a number of days.';
    expect(told('mean((due - began) of visits)')).toEqual([['wrong-kind', '-', 'two dates, or two moments', remedy]]);
    const difference = 'a difference: two dates can only be subtracted';
    expect(told('mean((due + due) of visits)')).toEqual([['wrong-kind', '+', difference, remedy]]);
    expect(told('mean((over * began) of visits)')).toEqual([['wrong-kind', '*', difference, remedy]]);
  });

  test('of a date with a number moves it, by days where they are written, and in no other way', () => {
    const remedy = 'Add days to a date or subtract them: season_start + 30.';
    for (const [text, operator] of [
      ['opening * 2', '*'],
      ['opening / 2', '/'],
      ['5 - opening', '-'],
      ['5 / opening', '/'],
    ] as const) {
      expect(told(text)).toEqual([['wrong-kind', operator, 'a date that is moved by days', remedy]]);
    }
    for (const text of ['opening + 2', '2 + opening', 'opening - 2', 'opening + limit', 'opening - -2']) {
      expect(told(text)).toEqual([]);
    }
    expect(told('opening + wage')[0]!.slice(0, 2)).toEqual(['units-differ', '+']);
    // A plain number says days of a date; of a moment it could be minutes as well.
    expect(told('count(visits where due + 2 > due)')).toEqual([]);
    expect(told('count(visits where began + 2 > over)').map(([code, seen]) => [code, seen])).toEqual([
      ['units-differ', '+'],
    ]);
    expect(told('count(visits where began + limit > over)')).toEqual([]);
  });

  test('of temperatures knows no product, on either side, and no sign', () => {
    const mean = 'mean(contact_temp_f of decontaminations)';
    for (const text of [`${mean} * 2`, `2 * ${mean}`, `${mean} / ${mean}`]) {
      expect(told(text)[0]!.slice(2)).toEqual([
        'something with a true zero; a temperature scale has none',
        'Multiply and divide differences of temperatures.',
      ]);
    }
    expect(told(`-${mean}`)).toEqual([
      ['units-differ', `-${mean}`, 'something with a true zero', 'Take the sign out.'],
    ]);
    expect(told(`-(${mean} - ${mean})`)).toEqual([]);
  });
});
