import type { Source } from '../source.ts'

export const steamSources: readonly Source[] = [
  {
    id: 'SRC-550',
    what: 'Boiling pressure and temperature of water',
    source: 'IAPWS R7-97, region 4, in public copies; checked against Tables 35 and 36 in tests/reference/steam.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-551',
    what: 'Specific volume and enthalpy of liquid water',
    source: 'IAPWS R7-97, region 1, Table 2 in public copies; checked against its Table 5 in tests/reference/steam.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-552',
    what: 'Specific volume and enthalpy of steam, and the boundary of regions 2 and 3',
    source:
      'IAPWS R7-97, region 2, Tables 1, 10 and 11 in public copies; checked against Table 15 in tests/reference/steam.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-553',
    what: 'Saturated steam table from 0 to 350 °C',
    source: 'IAPWS R7-97, regions 1, 2 and 4 together; checked in tests/reference/steam.test.ts',
    mark: 'worked out',
  },
]
