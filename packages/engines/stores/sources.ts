import type { Source } from '../source.ts'

/** Sources of what is drawn from the store, cut and ordered. */
export const storeSources: readonly Source[] = [
  {
    id: 'SRC-770',
    what: 'Which sums of some lengths there are, a bit for each tenth of a millimetre',
    source:
      'subset sums by dynamic programming, R. Bellman 1957; checked against all sums in packages/engines/stores/cutting/reachable.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-771',
    what: 'The best cutting of a few sets: for each set of sets the best way with the reels so far',
    source: 'dynamic programming over subsets; checked against all ways in packages/engines/stores/cutting/place.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-772',
    what: 'Bound of waste: each reel ends open or full, and takes a sum there is; full reels are chosen to cover what the open ones cannot take',
    source:
      'relaxation of the cutting, proved in the docstring; checked against all ways in packages/engines/stores/cutting/bound.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-773',
    what: 'Search for a cutting: best fit of the longest first, reels filled by reachable sums, two reels dealt anew, three reels cut anew',
    source: 'methods of this program, measured against all ways and published optima; rounds and widths are ours',
    mark: 'set by us',
  },
  {
    id: 'SRC-774',
    what: 'Bound of waste by prices of the pieces: a reel gains no more than its best pattern',
    source:
      'P. C. Gilmore and R. E. Gomory, Operations Research 9 (1961), pp. 849-859, prices by subgradient steps; checked against a published optimum in tests/reference/cutting.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-775',
    what: 'Rings of a valve from one reel, or from one batch; a set is cut whole or not at all; what expires first is cut first',
    source: 'practice of the trade; the order in which these count is ours',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-780',
    what: 'Days of the Gregorian calendar as numbers, years counted from 1 March',
    source:
      'arithmetic of the calendar; checked against the clock of the language in packages/engines/stores/calendar-day.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-781',
    what: 'Stock over time: what arrives counts before what is drawn on a day, what expires is lost at its end, what expires first is drawn first',
    source: 'practice of stores',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-782',
    what: 'Order by: the first day below the least stock, less the lead time; as much as the lowest day before the horizon lacks, in whole packs',
    source: 'arithmetic; checked by ordering it in packages/engines/stores/stock-projection.test.ts',
    mark: 'worked out',
  },
]
