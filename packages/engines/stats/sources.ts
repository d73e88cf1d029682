import type { Source } from '../source.ts'

export const statsSources: readonly Source[] = [
  {
    id: 'SRC-301',
    what: 'Least squares, errors of the line, limits of line and reading',
    source:
      'NIST/ITL Statistical Reference Datasets, Norris; checked in tests/reference/stats-lines.test.ts and least-squares.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-302',
    what: 'Normal distribution: rational approximation, continued fraction in the tail',
    source:
      'J. F. Hart and others, Computer Approximations, 1968, algorithm 5666, as given by G. West, Better approximations to cumulative normal functions, Wilmott 2005; checked against figures of 60 digits in tests/reference/stats-distributions.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-303',
    what: 'Normal quantile, PPND16',
    source:
      'M. J. Wichura, Algorithm AS 241, Applied Statistics 37 (1988), pp. 477-484; checked in tests/reference/stats-distributions.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-304',
    what: 'Simplex search without derivatives',
    source: 'J. A. Nelder and R. Mead, A simplex method for function minimization, Computer Journal 7 (1965), pp. 308-313',
    mark: 'from memory',
  },
  {
    id: 'SRC-305',
    what: 'Gamma function and incomplete gamma functions',
    source:
      'Abramowitz and Stegun, Handbook of Mathematical Functions, 6.1 and 6.5; W. Gautschi, ACM TOMS 5 (1979), small shapes; N. M. Temme, SIAM J. Math. Anal. 10 (1979), vast shapes; checked in tests/reference/stats-distributions.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-306',
    what: 'Incomplete beta function',
    source:
      'Abramowitz and Stegun, Handbook of Mathematical Functions, 26.5.8 (continued fraction); checked in tests/reference/stats-distributions.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-307',
    what: 'Student t distribution; its transformation to the normal one for many degrees of freedom',
    source:
      'Abramowitz and Stegun, 26.7; G. W. Hill, Algorithm 395, Communications of the ACM 13 (1970); checked in tests/reference/stats-distributions.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-308',
    what: 'Chi-squared distribution',
    source:
      'Abramowitz and Stegun, 26.4; NIST/SEMATECH e-Handbook, 1.3.6.7.4; checked in tests/reference/stats-distributions.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-309',
    what: 'Exact limits of a Poisson mean',
    source: 'F. Garwood, Biometrika 28 (1936), pp. 437-442; checked in tests/reference/stats-limits.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-310',
    what: 'Exact limits of a share',
    source: 'C. J. Clopper and E. S. Pearson, Biometrika 26 (1934), pp. 404-413; checked in tests/reference/stats-limits.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-311',
    what: 'Score limits of a share',
    source: 'E. B. Wilson, J. Amer. Statist. Assoc. 22 (1927), pp. 209-212; checked in tests/reference/stats-limits.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-312',
    what: 'Median of pairwise slopes and its limits',
    source:
      'P. K. Sen, J. Amer. Statist. Assoc. 63 (1968), pp. 1379-1389, with its example; checked in tests/reference/stats-lines.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-313',
    what: 'Survival from censored lives, its error and limits, median',
    source:
      'E. L. Kaplan and P. Meier, J. Amer. Statist. Assoc. 53 (1958), pp. 457-481; three published sets in tests/reference/stats-survival.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-314',
    what: 'Comparison of groups of lives',
    source:
      'D. P. Harrington and T. R. Fleming, Biometrika 69 (1982), pp. 553-566; published sets in tests/reference/stats-survival.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-315',
    what: 'Weibull and exponential fits of censored lives by greatest likelihood',
    source:
      'NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3; slopes and curvatures worked out; checked in tests/reference/stats-lifetimes.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-316',
    what: 'Mean number of repeat events by age and its variance',
    source:
      'W. Nelson, Confidence limits for recurrence data, Technometrics 37 (1995), pp. 147-157, with its valve seat data; checked in tests/reference/stats-repeat-events.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-317',
    what: 'Power law process and tests for trend',
    source:
      'NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.5.2 (read) and 8.2.3.4 (from memory); checked in tests/reference/stats-repeat-events.test.ts',
    mark: 'read',
  },
]
