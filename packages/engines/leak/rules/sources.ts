import type { Source } from '../../source.ts'

const rules = 'checked in tests/reference/leak-rules.test.ts'
const lives = 'checked in tests/reference/packing-lives.test.ts'

/** Of rules about leaks, what leaks lose, and packings compared. */
export const leakRuleSources: readonly Source[] = [
  {
    id: 'SRC-755',
    what: 'Leak from 10,000 ppm; monthly, quarterly after two clean months, monthly after a leak; first attempt within 5, repair within 15 calendar days',
    source: `40 CFR 61.242-7, law text; ${rules}`,
    mark: 'read',
  },
  {
    id: 'SRC-756',
    what: 'Skipped periods by percent leaking: half a year after two good quarters, a year after five, monthly above 2 %',
    source: `40 CFR 264.1057 and 264.1062, law text; ${rules}`,
    mark: 'read',
  },
  {
    id: 'SRC-757',
    what: 'No more than 2.0 % leaking, once a year; or quarters skipped: one after two at 2.0 % or less, three after five',
    source: `40 CFR 60.483-1 and 60.483-2, law text; ${rules}`,
    mark: 'read',
  },
  {
    id: 'SRC-758',
    what: 'Leak from 500 ppm; monthly where at least the greater of two valves and 2 % leak, quarterly below',
    source: `40 CFR 65.106, law text; ${rules}`,
    mark: 'read',
  },
  {
    id: 'SRC-759',
    what: 'Leak from 10,000 ppm; monthly, quarterly after two clean months',
    source: `40 CFR 63.1006, level 1, law text; ${rules}`,
    mark: 'read',
  },
  {
    id: 'SRC-760',
    what: 'Parts of example rules: once a year for valves difficult to monitor; 5 and 15 days, and monthly then quarterly, beside 60.483; 5 and 15 days beside 65.106 and 63.1006',
    source: '40 CFR 60.482-7, 61.242-7(h), 63 subpart TT and 65 subpart F',
    mark: 'from memory',
  },
  {
    id: 'SRC-761',
    what: 'Calendar periods as days: a month 28, a quarter 90, half a year 181, a year 365, the shortest of each',
    source: 'rule of this program: days between looks that leave out no calendar period; a site may set others',
    mark: 'set by us',
  },
  {
    id: 'SRC-762',
    what: 'A valve that leaked keeps its own days between looks until it has been clean as often as the first step asks',
    source: 'rule of this program where a site monitors by percent leaking',
    mark: 'set by us',
  },
  {
    id: 'SRC-763',
    what: 'Percents compared as whole numbers to a millionth; unsafe valves left out, difficult ones counted where monitored',
    source: `arithmetic, and a reading of this program that a site may change; ${rules}`,
    mark: 'set by us',
  },
  {
    id: 'SRC-764',
    what: 'Errors of a loss: in proportion to drops, with the square of a diameter, through the power of a correlation',
    source: 'arithmetic; checked against the engines in packages/engines/leak/loss.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-765',
    what: 'Range in which a correlation of screening values is taken to hold: 1 to 100,000 ppmv, meter not at its end',
    source: 'limits of this program, after the published order of use and ends of meters',
    mark: 'set by us',
  },
  {
    id: 'SRC-766',
    what: 'Sum of losses with independent errors: root of the sum of squares of half widths, upwards and downwards each',
    source: 'propagation of independent errors; checked in packages/engines/leak/loss-sum.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-767',
    what: 'Life of a packing in months of 30.4375 days: ended when worn out, cut short when renewed early or still in the box',
    source: 'a twelfth of 365.25 days; the rest is a rule of this program',
    mark: 'set by us',
  },
  {
    id: 'SRC-768',
    what: 'Packings are compared from five ended lives each; a difference is unlikely to be chance below 1 less the confidence',
    source: `rule of this program, on methods of SRC-313 to SRC-315; ${lives}`,
    mark: 'set by us',
  },
]
