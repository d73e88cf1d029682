import type { Source } from '../source.ts'

/** Sources of what is scheduled, and when. */
export const scheduleSources: readonly Source[] = [
  {
    id: 'SRC-720',
    what: 'Next look: the earliest of follow-up, leak interval, reserve and longest time between looks',
    source: 'rules of this program; the follow-up about three days after a repack is usual',
    mark: 'set by us',
  },
  {
    id: 'SRC-732',
    what: 'Plan of rounds: open weeks of an area by dynamic programming over the week opened last, then local search and annealing',
    source:
      'method of this program, measured against lower bounds by a solver (npm run bench:plan); simulated annealing by Kirkpatrick, Gelatt and Vecchi, Science 220 (1983), from memory',
    mark: 'set by us',
  },
  {
    id: 'SRC-733',
    what: 'Windows of visits: a share of the time between looks to either side, overdue and missed looks caught up with',
    source: 'rules of this program; a site sets the share and the weeks to catch up',
    mark: 'set by us',
  },
  {
    id: 'SRC-734',
    what: 'Plan of repacks: pins first, then an assignment of boundaries to slots within hours and stock, or to waiting',
    source: 'rules of this program, measured against proven bounds (npm run bench:plan)',
    mark: 'set by us',
  },
  {
    id: 'SRC-735',
    what: 'What a slot costs: chance of running out and leaks before it, by criticality, and packing life thrown away',
    source: 'rule of this program; a site sets the weights, in money or in points',
    mark: 'set by us',
  },
  {
    id: 'SRC-736',
    what: 'Triangular distribution of an uncertain day: quantiles go by the root on either side, the mean is (a + b + c) / 3',
    source:
      'M. Evans, N. Hastings and B. Peacock, Statistical Distributions, 3rd edition, 2000; checked against moments in packages/engines/schedule/repack-plan/slot-cost.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-737',
    what: 'Gauss-Legendre rule of eight points',
    source:
      'M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, table 25.4; checked on powers up to the 14th in packages/engines/schedule/repack-plan/slot-cost.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-738',
    what: 'Bounds from prices of resources, raised by subgradient steps; choices left out whose price is beyond what is known to do',
    source:
      'M. Held, P. Wolfe and H. P. Crowder, Mathematical Programming 6 (1974), pp. 62-88; M. L. Fisher, Management Science 27 (1981), pp. 1-18; bounds checked against trying everything in packages/engines/schedule/assignment/assign.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-739',
    what: 'Bounds of assignments by filling each knapsack exactly, with a reward for each item that is taken',
    source:
      'M. L. Fisher, R. Jaikumar and L. N. Van Wassenhove, Management Science 32 (1986), pp. 1095-1103; five instances of the OR-Library solved in tests/reference/assignment.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-750',
    what: '2-opt and Or-opt with ten neighbours and don’t-look bits; two starts, the better one kept',
    source:
      'G. A. Croes, Operations Research 6 (1958), pp. 791-812; I. Or, thesis, Northwestern University 1976; D. S. Johnson and L. A. McGeoch, in Local Search in Combinatorial Optimization, 1997; within 1 % of published optima in tests/reference/walking-order.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-751',
    what: 'Double bridge within a window of 50 nodes, 2,000 times, what is shorter kept',
    source:
      'O. Martin, S. W. Otto and E. W. Felten, Complex Systems 5 (1991), pp. 299-326; window and number are ours; checked in tests/reference/walking-order.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-752',
    what: 'Generator of seeded chance: three shifts of a word of 32 bits, 13, 17 and 5',
    source: 'G. Marsaglia, Xorshift RNGs, Journal of Statistical Software 8 (2003), no. 14',
    mark: 'from memory',
  },
  {
    id: 'SRC-753',
    what: 'Shortest walks over stairs, level by level, none past the level it leads to',
    source: 'geometry; checked against all walks over every level in packages/engines/schedule/walking-distance.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-754',
    what: 'Walks on one level are straight lines; without stairs levels are joined anywhere; a level is worth a number of metres',
    source: 'rules of this program; the worth is given in each call',
    mark: 'set by us',
  },
]
