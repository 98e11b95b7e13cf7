import { describe, expect, it } from 'vitest';
import { type Colour, colours, paint, rampSteps } from '../../src/chart/colours.js';

/** Relative luminance and contrast as WCAG 2.2 defines them (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio). */
function luminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light! + 0.05) / (dark! + 0.05);
}

const schemes: readonly (keyof Colour)[] = ['light', 'dark'];
const of = (name: string, scheme: keyof Colour): string => colours[name]![scheme];

describe('the colours of a page', () => {
  it('are measured by a ruler that gives the published ratios', () => {
    // WCAG 2.2, 1.4.3: black on white is 21:1. #767676 on white as the lightest grey that passes: common practice, from memory.
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#767676', '#ffffff')).toBeGreaterThan(4.5);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  });

  const texts: readonly (readonly [string, string])[] = [
    ...['ink', 'soft', 'accent', 'alert', 'second', 'third'].map((name) => [name, 'paper'] as const),
    ['ink', 'band'],
    ['ink', 'alert-wash'],
    ['alert', 'alert-wash'],
    ['ink', 'accent-wash'],
    ['accent', 'accent-wash'],
    ...Array.from({ length: rampSteps }, (_, at) => [`ramp-ink-${at + 1}`, `ramp-${at + 1}`] as const),
  ];

  it.each(texts)('let %s be read as text on %s (WCAG 2.2, 1.4.3: 4.5 to 1)', (text, ground) => {
    for (const scheme of schemes) expect(contrast(of(text, scheme), of(ground, scheme))).toBeGreaterThanOrEqual(4.5);
  });

  it.each(['rule', 'accent', 'second', 'third', 'soft', 'alert'])(
    'let %s be seen as a mark (1.4.11: 3 to 1)',
    (mark) => {
      for (const scheme of schemes) expect(contrast(of(mark, scheme), of('paper', scheme))).toBeGreaterThanOrEqual(3);
    },
  );

  it('climb from least to most in one direction, so that the ramp reads in grey', () => {
    const steps = (scheme: keyof Colour) =>
      Array.from({ length: rampSteps }, (_, at) => luminance(of(`ramp-${at + 1}`, scheme)));
    expect(steps('light')).toEqual([...steps('light')].sort((a, b) => b - a));
    expect(steps('dark')).toEqual([...steps('dark')].sort((a, b) => a - b));
  });

  it('are known by name only', () => {
    expect(() => paint('mauve')).toThrow('mauve');
  });
});
