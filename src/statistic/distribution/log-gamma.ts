/** ζ(n) − 1 for n = 2, 3, …; Abramowitz & Stegun (1964) Table 23.3. */
const ZETA_LESS_ONE: readonly number[] = [
  0.6449340668482264, 0.2020569031595943, 0.08232323371113819, 0.03692775514336993, 0.01734306198444914,
  0.008349277381922827, 0.00407735619794434, 0.0020083928260822143, 0.0009945751278180853, 0.0004941886041194645,
  0.0002460865533080483, 0.00012271334757848915, 6.124813505870483e-5, 3.058823630702049e-5, 1.528225940865187e-5,
  7.637197637899763e-6, 3.81729326499984e-6, 1.908212716553939e-6, 9.539620338727962e-7, 4.769329867878064e-7,
  2.38450502727733e-7, 1.1921992596531106e-7, 5.960818905125948e-8, 2.980350351465228e-8, 1.490155482836504e-8,
];

const EULER = 0.5772156649015329;

/** Half the logarithm of 2π. */
export const HALF_LOG_TWO_PI = 0.9189385332046728;

/** log Γ(2 + z) for |z| ≤ ½; DLMF 5.7.3, which keeps its digits where the logarithm passes 0. */
function aroundTwo(z: number): number {
  let power = -z;
  let total = z * (1 - EULER);
  for (const [index, zeta] of ZETA_LESS_ONE.entries()) {
    power *= -z;
    total += (zeta * power) / (index + 2);
  }
  return total;
}

/** What Stirling's formula for log n! leaves out, for n of 15 or more; DLMF 5.11.1. */
export function stirlingSeries(n: number): number {
  const s = 1 / (n * n);
  return (1 / 12 - s * (1 / 360 - s * (1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - (s * 691) / 360360))))) / n;
}

/** The natural logarithm of the gamma function, for x above 0. */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`log gamma needs a number above 0, not ${x}`);
  if (x >= 15) return (x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI + stirlingSeries(x);
  if (x < 0.5) return aroundTwo(x) - Math.log1p(x) - Math.log(x);
  if (x < 1.5) return aroundTwo(x - 1) - Math.log1p(x - 1);
  let at = x;
  let product = 1;
  while (at >= 2.5) {
    at -= 1;
    product *= at;
  }
  return Math.log(product) + aroundTwo(at - 2);
}
