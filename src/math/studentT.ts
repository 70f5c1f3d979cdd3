/** Logarithm of the gamma function for x > 0: Lanczos' series, relative error below 2e-10 (Numerical Recipes 6.1). */
function logGamma(x: number): number {
  const c = [
    76.18009172947146, -86.50532032941677, 24.01409824083091, -1.231739572450155,
    0.1208650973866179e-2, -0.5395239384953e-5,
  ];
  const sum = c.reduce((s, ci, i) => s + ci / (x + 1 + i), 1.000000000190015);
  return (x + 0.5) * Math.log(x + 5.5) - (x + 5.5) + Math.log((2.5066282746310005 * sum) / x);
}

/** Continued fraction of the incomplete beta function by Lentz' method (DLMF 8.17.22; Numerical Recipes 6.4). */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const apart = (v: number): number => (Math.abs(v) < tiny ? tiny : v);
  let c = 1;
  let d = 1 / apart(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / apart(1 + even * d);
    c = apart(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / apart(1 + odd * d);
    c = apart(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-14) break;
  }
  return fraction;
}

/** Regularised incomplete beta function I_x(a, b), 0 < x < 1. */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = logGamma(a + b) - logGamma(a) - logGamma(b);
  return (Math.exp(front + a * Math.log(x) + b * Math.log1p(-x)) * betaFraction(x, a, b)) / a;
}

/** Share of Student's t distribution beyond +-t, t > 0 (Abramowitz & Stegun 26.7.1). */
const outside = (t: number, df: number): number => incompleteBeta(df / (df + t * t), df / 2, 0.5);

/**
 * The t that leaves `share` (0..1) of Student's distribution outside +-t; degrees of freedom need not be whole.
 * By halving, to 1e-10.
 */
export function studentT(share: number, df: number): number {
  let [low, high] = [0, 1];
  while (outside(high, df) > share) high *= 2;
  while (high - low > 1e-10 * high) {
    const middle = (low + high) / 2;
    if (outside(middle, df) > share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
