import type { Source } from '../source.ts'

/** Where the wear model comes from; shown in docs/sources.md. */
export const wearSources: readonly Source[] = [
  {
    id: 'SRC-700',
    what: 'Wear model: Wiener wear with reading error, a lognormal rate for each life, bed-in that dies away',
    source:
      'textbook degradation model (W. Q. Meeker and L. A. Escobar, Statistical Methods for Reliability Data); bed-in of ours',
    mark: 'from memory',
  },
  {
    id: 'SRC-701',
    what: 'Starting values: 3 mm a year, reading variance 0.2 mm², wear variance 0.5 mm² a year, bed-in 1 mm and 120 days over 50 days',
    source: 'none; replaced by the fit of the plant',
    mark: 'set by us',
  },
  {
    id: 'SRC-702',
    what: 'Filter linear in the rate, equal to generalised least squares',
    source: 'R. E. Kalman 1960; checked against dense matrices in packages/engines/wear/filter.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-703',
    what: 'Nips since the last reading as falls of the level; error of a nip 15 % of its travel',
    source: 'difference of two uniform places within a step has variance step²/6; the 15 % are ours',
    mark: 'set by us',
  },
  {
    id: 'SRC-704',
    what: 'Sum over 13 even nodes in place of the integral over ln rate',
    source: 'trapezoid rule; checked against 4,000 nodes in packages/engines/wear/posterior.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-705',
    what: 'Gross errors: 4.5 robust standard deviations off the neighbours; a second reading asked for above 3',
    source: '1.4826 times the median absolute residual is the deviation of normal errors; the limits are ours',
    mark: 'set by us',
  },
  {
    id: 'SRC-706',
    what: 'Dates by a bracketed secant search on log-odds over ln days',
    source: 'numerical analysis; checked by putting the dates back in packages/engines/wear/run-out.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-707',
    what: 'Earlier lives of a valve: normal updating of its own mean; used below a relative error of 0.35, share at most 0.6',
    source: 'normal-normal model; limits found by simulation',
    mark: 'worked out',
  },
  {
    id: 'SRC-708',
    what: 'Coverage, error and chance of the forecast on invented plants',
    source: 'tests/simulation/forecast.simulation.test.ts and npm run bench:forecast; real plants differ',
    mark: 'worked out',
  },
  {
    id: 'SRC-709',
    what: 'Fit of the priors: empirical Bayes by expectation and maximisation, wear by marginal likelihood',
    source: 'textbook method (B. P. Carlin and T. A. Louis, Bayes and Empirical Bayes Methods); weights of ours',
    mark: 'from memory',
  },
  {
    id: 'SRC-710',
    what: 'Table of the normal distribution by cubics with exact ends and slopes, within 4e-9',
    source: 'Hermite interpolation; checked against normalDistribution in packages/engines/wear/normal-table.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-711',
    what: 'Place of an outcome in its forecast: the chance given for it, read between the dates kept; first forecast for each span of readings',
    source: 'probability integral transform (M. Rosenblatt 1952); reading between dates and the choice of the first are ours',
    mark: 'from memory',
  },
  {
    id: 'SRC-712',
    what: 'Calibration with lives still going: share inside an interval by Kaplan-Meier, Greenwood and the score form of the limits',
    source:
      'delta method on the estimate of SRC-313; with all lives run out equal to SRC-311, checked in packages/engines/wear/calibration.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-713',
    what: 'Forecasts made again from the readings of their time, with the prior of now; at least 10 lives for a share',
    source: 'none',
    mark: 'set by us',
  },
  {
    id: 'SRC-714',
    what: 'Chance between kept dates: normal score even in ln days, held against the forecast itself in packages/engines/wear/chance-by-dates.test.ts',
    source: 'none',
    mark: 'set by us',
  },
]
