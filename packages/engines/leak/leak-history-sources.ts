import type { Source } from '../source.ts'

/** Where the history of leaks comes from; shown in docs/sources.md. */
export const leakHistorySources: readonly Source[] = [
  {
    id: 'SRC-790',
    what: 'What leaks to a meter: a net screening value at the limit or above it',
    source:
      'US Code of Federal Regulations, 40 CFR 61.242-7(b) and 63.1006(b)(2): 10,000 ppm or greater; the limit is given in each call',
    mark: 'read',
  },
  {
    id: 'SRC-791',
    what: 'When a leak opens, is seen dry, and is the same leak again; what only a meter saw, only a meter proves dry',
    source: 'rules of this program; a site sets the days within which a leak is the same again',
    mark: 'set by us',
  },
  {
    id: 'SRC-792',
    what: 'A month of 30.4375 days: a twelfth of 365.25',
    source: 'arithmetic',
    mark: 'worked out',
  },
  {
    id: 'SRC-793',
    what: 'Bands of packing age, in months since the repack',
    source: 'rule of this program',
    mark: 'set by us',
  },
  {
    id: 'SRC-794',
    what: 'Leaks in the days after an outage, beside the share of time those days make up',
    source: 'rule of this program; the days are given in each call',
    mark: 'set by us',
  },
  {
    id: 'SRC-795',
    what: 'What changed before a leak: nips of the first and the last half, travel used in three months and in the life before them',
    source: 'rules of this program; a month without a leak is the least that a rate is given for',
    mark: 'set by us',
  },
  {
    id: 'SRC-796',
    what: 'Chance of a count or more: the Poisson sum is the incomplete gamma function',
    source:
      'M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.4.21; checked against the sum in tests/reference/repeat-leakers.test.ts',
    mark: 'from memory',
  },
]
