import type { Source } from '../source.ts'

export const packingSources: readonly Source[] = [
  {
    id: 'SRC-600',
    what: 'Temperature range of each packing family, in steam and otherwise',
    source: 'broad figures of the trade, rounded to the cautious side; none read',
    mark: 'from memory',
  },
  {
    id: 'SRC-601',
    what: 'Pressure limit of each packing family',
    source: 'broad figures of the trade for valve stems, rounded to the cautious side; none read',
    mark: 'from memory',
  },
  {
    id: 'SRC-602',
    what: 'pH range of each packing family',
    source: 'broad figures of the trade; none read',
    mark: 'from memory',
  },
  {
    id: 'SRC-603',
    what: 'Consolidation of each packing family: greased fibre 25 to 35 %, braided graphite 25 to 30 %, PTFE braid 15 to 25 %, die-formed graphite 10 to 25 %',
    source: 'practice of the trade; the middle of each range',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-604',
    what: 'Friction of packing on stem: PTFE 0.05 to 0.10, graphite 0.05 to 0.15, fibre 0.15 to 0.25',
    source: 'that PTFE has the least and graphite is close is said by the Fluid Sealing Association; the figures are not read',
    mark: 'from memory',
  },
  {
    id: 'SRC-605',
    what: 'Lateral stress of valve packing: one half of the stress along the stem',
    source: 'called common in the abstract of ASME/NRC Pump and Valve Symposium paper PVS2017-3518, for no family by name',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-606',
    what: 'Lateral stress of a confined solid, v / (1 - v), with v = 0.46 for PTFE at 23 °C',
    source: 'P. Smith and R. W. Zappe, Valve Selection Handbook, p. 21, for solid PTFE; taken over for the braid',
    mark: 'worked out',
  },
  {
    id: 'SRC-607',
    what: 'Least gland stress: braided graphite 37.92 MPa, die-formed graphite 26.2 MPa; softer families less',
    source: 'practice of the trade, 5,500 and 3,800 psi; the softer families from memory',
    mark: 'common practice, no source',
  },
  { id: 'SRC-608', what: 'Usual life of each packing family on valves', source: 'not read', mark: 'from memory' },
  {
    id: 'SRC-609',
    what: 'Cautions of packing families: dust, lead, asbestos, graphite on stainless steel, oxidising fluids, fume of PTFE',
    source: 'practice of the trade and of safety at work; site procedure decides',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-610',
    what: 'Near a limit: from nine tenths of it on; order of the families that suit',
    source: 'set by us, to ask for a second look',
    mark: 'set by us',
  },
  {
    id: 'SRC-611',
    what: 'pH and oxidising power of fluids by their name',
    source: 'broad chemistry, not read',
    mark: 'from memory',
  },
]
