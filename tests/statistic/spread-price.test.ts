import { describe, expect, it } from 'vitest';
import { spreadPrice, yearsToPay } from '../../src/statistic/money/spread-price.js';

describe('a price spread over its life', () => {
  // Capital recovery factors, A/P, of the compound interest tables in every textbook of engineering economy, such as Grant,
  // Ireson and Leavenworth 1990, appendix D. Digits from memory.
  it.each([
    [0.08, 15, 0.1168],
    [0.07, 10, 0.1424],
    [0.1, 5, 0.2638],
    [0.06, 20, 0.0872],
  ])('at %d for %d years is the table’s', (rate, years, factor) => {
    expect(spreadPrice(1, years, rate)).toBeCloseTo(factor, 4);
  });

  it('is the price by its life without discount', () => {
    expect(spreadPrice(800, 8, 0)).toBe(100);
    expect(spreadPrice(800, 8, 1e-12)).toBeCloseTo(100, 6);
  });

  it('has no answer for no life', () => {
    expect(spreadPrice(800, 0, 0.03)).toBeNull();
  });
});

describe('years until a price is paid', () => {
  it('are those over which it is spread', () => {
    expect(yearsToPay(40_000, spreadPrice(40_000, 12, 0.05)!, 0.05)).toBeCloseTo(12, 9);
    expect(yearsToPay(900, 300, 0)).toBe(3);
    // Nothing to pay is paid at once, and never written with a sign.
    expect(yearsToPay(0, 300, 0.05)).toBe(0);
  });

  it('never come where the saving is no more than the discount', () => {
    expect(yearsToPay(10_000, 500, 0.05)).toBeNull();
    expect(yearsToPay(10_000, 0, 0)).toBeNull();
  });
});
