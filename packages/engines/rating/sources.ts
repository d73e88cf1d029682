import type { Source } from '../source.ts'

export const ratingSources: readonly Source[] = [
  {
    id: 'SRC-570',
    what: 'Pressure and temperature of material group 1.1, classes 150 to 1500',
    source:
      'ASME B16.34 and B16.5, Table 2-1.1, in about four public tabulations, not in the standard. ' +
      'In one tabulation only: class 900 and 1500 above 425 °C, and the row of 538 °C; checked in tests/reference/rating.test.ts',
    mark: 'read',
  },
  { id: 'SRC-571', what: 'Straight line between rows; lower limit -29 °C', source: 'ASME B16.34', mark: 'from memory' },
  {
    id: 'SRC-572',
    what: 'Group 1.1 not advised for long use above 425 °C: graphite forms in the steel',
    source: 'ASME B16.34, note to the table',
    mark: 'from memory',
  },
]
