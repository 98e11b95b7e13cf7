/**
 * The equal yearly amount that pays a price over its life at a yearly discount rate (the capital recovery factor times
 * the price); the price by its life at a rate of 0. Null where the life is not above 0 or the rate is −1 or less. Grant
 * EL, Ireson WG, Leavenworth RS (1990) Principles of Engineering Economy, 8th ed., chapter 4.
 */
export function spreadPrice(price: number, life: number, rate: number): number | null {
  if (!(life > 0 && rate > -1)) return null;
  return rate === 0 ? price / life : (price * rate) / -Math.expm1(-life * Math.log1p(rate));
}

/**
 * Years until equal yearly amounts, each at the end of its year and discounted, have paid a price; fractions of a year
 * by the same curve. Null where they never do. The inverse of `spreadPrice` in its life.
 */
export function yearsToPay(price: number, yearly: number, rate: number): number | null {
  if (!(price >= 0 && yearly > 0 && rate > -1)) return null;
  if (rate === 0 || price === 0) return price / yearly;
  const left = 1 - (price * rate) / yearly;
  return left > 0 ? -Math.log(left) / Math.log1p(rate) : null;
}
