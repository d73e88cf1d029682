import type { Source } from '../source.ts'

/** Where the interval between visits comes from; shown in docs/sources.md. */
export const intervalSources: readonly Source[] = [
  {
    id: 'SRC-580',
    what: 'Interval between visits: leak rate of each valve gamma distributed within its group, updated by its own visits',
    source: 'gamma-Poisson empirical Bayes in age to the power k; tried in tests/simulation/leak-interval.simulation.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-581',
    what: 'Negative binomial marginal likelihood of counts with gamma distributed rates',
    source: 'integral of a Poisson chance over a gamma density; checked in tests/reference/leak-interval.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-582',
    what: 'Mean time of a leak within the visit that found it: 1/rate - D exp(-rate D) / (1 - exp(-rate D))',
    source: 'mean of an exponential time cut off at D; checked by summing in packages/engines/leak/interval.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-583',
    what: 'The exponent of age stays 1 unless twice the gain in log-likelihood exceeds 3.84',
    source: 'likelihood ratio: 95 % point of chi-squared with one degree of freedom, 3.841',
    mark: 'read',
  },
  {
    id: 'SRC-584',
    what: 'Leaning of the gamma shape to 3, and the rate that stands in where a group has no leak yet',
    source: 'none; keeps a small group sane',
    mark: 'set by us',
  },
]
