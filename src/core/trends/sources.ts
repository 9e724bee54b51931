import type { Source } from "../source.ts";

/** Works the trends room rests on. */
export const trendsSources = {
  "mann-1945": {
    citation: "Mann (1945), Nonparametric tests against trend, Econometrica 13, 245–259",
    standing: "from memory",
  },
  "kendall-1975": {
    citation: "Kendall (1975), Rank Correlation Methods, 4th edition",
    standing: "from memory",
  },
  "theil-1950": {
    citation: "Theil (1950), A rank-invariant method of linear and polynomial regression analysis",
    standing: "from memory",
  },
  "sen-1968": {
    citation:
      "Sen (1968), Estimates of the regression coefficient based on Kendall's tau, JASA 63, 1379–1389",
    standing: "from memory",
  },
  "gilbert-1987": {
    citation: "Gilbert (1987), Statistical Methods for Environmental Pollution Monitoring, chapter 16",
    standing: "from memory",
  },
  "tobin-1958": {
    citation:
      "Tobin (1958), Estimation of relationships for limited dependent variables, Econometrica 26, 24–36",
    standing: "from memory",
  },
  "turnbull-1976": {
    citation:
      "Turnbull (1976), The empirical distribution function with arbitrarily grouped, censored and truncated data, JRSS B 38, 290–295",
    standing: "from memory",
  },
  "cody-1969": {
    citation:
      "Cody (1969), Rational Chebyshev approximations for the error function, Math. Comp. 23, 631–637",
    standing: "from memory",
  },
  "abramowitz-stegun-1964": {
    citation: "Abramowitz & Stegun (1964), Handbook of Mathematical Functions, chapter 26",
    standing: "from memory",
  },
  "golub-1965": {
    citation:
      "Golub (1965), Numerical methods for solving linear least squares problems, Numer. Math. 7, 206–216",
    standing: "from memory",
  },
  "johnson-kotz-1994": {
    citation:
      "Johnson, Kotz & Balakrishnan (1994), Continuous Univariate Distributions, volume 1, chapter 13",
    standing: "from memory",
  },
  "roberts-2018": {
    citation: "Roberts (2018), The unreasonable effectiveness of quasirandom sequences",
    standing: "from memory",
  },
  "pettitt-1979": {
    citation:
      "Pettitt (1979), A non-parametric approach to the change-point problem, Applied Statistics 28, 126–135",
    standing: "from memory",
  },
} as const satisfies Record<string, Source>;
