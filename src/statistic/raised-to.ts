/**
 * A base of at least 0 raised to a power. Engines disagree in the last digits of their own powers, though not of products,
 * logarithms and exponentials; made from those, a page has the same bytes wherever it is made. Whole powers up to 1,024 are
 * products; others are off by at most a few units in the last place for each unit of `exponent` times the base's logarithm.
 */
export function raisedTo(base: number, exponent: number): number {
  if (!Number.isInteger(exponent) || Math.abs(exponent) > 1024) return Math.exp(exponent * Math.log(base));
  let product = 1;
  let square = base;
  for (let left = Math.abs(exponent); left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) product *= square;
    square *= square;
  }
  return exponent < 0 ? 1 / product : product;
}
