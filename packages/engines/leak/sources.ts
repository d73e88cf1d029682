import type { Source } from '../source.ts'

const checked = 'checked in tests/reference/leak.test.ts'

export const leakSources: readonly Source[] = [
  { id: 'SRC-500', what: 'Area of a round opening', source: 'geometry', mark: 'worked out' },
  {
    id: 'SRC-501',
    what: 'Volume of a drop: a quarter and a third of a millilitre (4,000 and 3,000 drops a litre)',
    source: `US Geological Survey, two editions of its page on dripping taps, which differ; ${checked}`,
    mark: 'read',
  },
  {
    id: 'SRC-502',
    what: 'Volume of a drop: a twentieth of a millilitre (20 drops a millilitre)',
    source: `laboratory convention, in public texts; ${checked}`,
    mark: 'read',
  },
  { id: 'SRC-503', what: 'Drops a minute to litres a day', source: `1,440 minutes in a day; ${checked}`, mark: 'worked out' },
  {
    id: 'SRC-504',
    what: 'Steam through an opening after Napier: 51.43 lb/h for a square inch and a psi absolute',
    source: 'steam engineering handbooks; the figure is not confirmed, the metric one is worked out from it',
    mark: 'from memory',
  },
  {
    id: 'SRC-505',
    what: 'Steam through a round opening: 24.24 pressure diameter², lb/h, psi absolute, inches',
    source: `published formula, read in public copies; Napier with a coefficient of 0.60 built in; ${checked}`,
    mark: 'read',
  },
  {
    id: 'SRC-506',
    what: 'Coefficient 0.73 of Napier',
    source: `implied by the discharge table of US Department of Energy, Steam Tip Sheet 1; ${checked}`,
    mark: 'worked out',
  },
  {
    id: 'SRC-507',
    what: 'Critical pressure ratio of saturated steam, about 0.58',
    source: 'steam engineering handbooks',
    mark: 'from memory',
  },
  {
    id: 'SRC-508',
    what: 'Water through an opening; coefficient 0.61 of a sharp edge; 998.2 kg/m³ at 20 °C',
    source: `orifice formula of hydraulics; ${checked}`,
    mark: 'worked out',
  },
  {
    id: 'SRC-509',
    what: 'Choked flow of air through an opening, critical ratio 0.528',
    source: `isentropic flow of a perfect gas, gamma 1.4; ${checked}`,
    mark: 'worked out',
  },
  {
    id: 'SRC-510',
    what: 'Chart of free air through an opening; coefficients 0.97 well rounded, 0.65 sharp edged, 1.00 as printed',
    source: `published table of air discharge, read in public copies; ${checked}`,
    mark: 'read',
  },
  {
    id: 'SRC-511',
    what: 'Screening value to kg/h: correlations of SOCMI gas, SOCMI light liquid and petroleum industry valves',
    source: `US EPA, EPA-453/R-95-017; read in Quebec Clean Air Regulation Q-2 r.4.1, Schedule E, Table I; ${checked}`,
    mark: 'read',
  },
  {
    id: 'SRC-512',
    what: 'Default zero of SOCMI gas and petroleum industry valves',
    source: `Quebec Clean Air Regulation Q-2 r.4.1, Schedule E, Table II; ${checked}`,
    mark: 'read',
  },
  { id: 'SRC-513', what: 'Default zero of SOCMI light liquid valves', source: 'US EPA, EPA-453/R-95-017', mark: 'from memory' },
  {
    id: 'SRC-514',
    what: 'Pegged factors of valves at 10,000 and 100,000 ppmv',
    source: 'US EPA, EPA-453/R-95-017',
    mark: 'from memory',
  },
  {
    id: 'SRC-515',
    what: 'Order of use: default zero at background, correlation between, pegged factor at the end of the meter',
    source: 'American Petroleum Institute, Publication 4653, abstract',
    mark: 'read',
  },
  {
    id: 'SRC-516',
    what: 'Helium class AH: 1.78e-7 mbar·L/s for a millimetre of stem diameter',
    source: `ISO 15848-1:2015, read at second hand; ${checked}`,
    mark: 'read',
  },
  { id: 'SRC-517', what: 'Helium classes BH and CH: 1.78e-6 and 1.78e-4', source: 'ISO 15848-1:2015', mark: 'from memory' },
  {
    id: 'SRC-518',
    what: 'Cost of a steam leak in a year: flow, 8,760 hours, price of steam',
    source: `US Department of Energy, Steam Tip Sheet 1, worked example in two editions; ${checked}`,
    mark: 'read',
  },
  {
    id: 'SRC-519',
    what: 'Fuel for lost steam: heat taken up over boiler efficiency',
    source: 'heat balance',
    mark: 'worked out',
  },
  { id: 'SRC-520', what: 'Cost of lost water and air: volume times price', source: 'arithmetic', mark: 'worked out' },
  { id: 'SRC-521', what: 'Carbon of a leak: energy times the plant factor', source: 'arithmetic', mark: 'worked out' },
]
