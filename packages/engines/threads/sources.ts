import type { Source } from '../source.ts'

/** Sources of the threads; checked in tests/reference/threads.test.ts where they are marked read. */
export const threadSources: readonly Source[] = [
  {
    id: 'SRC-201',
    what: 'Metric coarse pitches M6 to M36',
    source: 'ISO 4032 and ISO 4014, public tabulation; checked in tests/reference/threads.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-202',
    what: 'UNC and UNF threads per inch',
    source:
      'ASME B18.2.2, pitch column, public tabulation; 1-1/8 and 1-3/8 UNF: UNF table after ASME B1.1, public tabulation; checked in tests/reference/threads.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-203',
    what: 'BSW and BSF threads per inch',
    source: 'BS 84:2007, public copy; checked in tests/reference/threads.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-204',
    what: 'Travel of a nut: turns times pitch of a single-start thread',
    source: 'geometry of the thread',
    mark: 'worked out',
  },
  {
    id: 'SRC-205',
    what: 'Metric fine pitches M8 to M36',
    source:
      'ISO 262 selected sizes for screws, bolts and nuts, two public tabulations; checked in tests/reference/threads.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-206',
    what: 'One flat of a hexagon nut is a sixth of a turn',
    source: 'geometry of the hexagon',
    mark: 'worked out',
  },
  {
    id: 'SRC-210',
    what: 'Tensile stress area of ISO metric threads',
    source:
      'ISO 898-1; formula from memory, reproduces the table of areas read in a public tabulation; checked in tests/reference/threads.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-211',
    what: 'Tensile stress area of unified threads',
    source:
      'ASME B1.1; formula from memory, reproduces the table of areas read in a public tabulation; checked in tests/reference/threads.test.ts',
    mark: 'from memory',
  },
  {
    id: 'SRC-212',
    what: 'Stress area of Whitworth threads at the mean of pitch and minor diameter, thread depth 0.640327 P',
    source: 'thread depth BS 84; the rule of ASME B1.1 carried over, as no standard gives an area',
    mark: 'worked out',
  },
  {
    id: 'SRC-220',
    what: 'Widths across flats of metric nuts, and of M10, M12, M14 and M22 before 1982',
    source: 'ISO 4032 and ISO 272:1982, public tabulations; checked in tests/reference/threads.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-221',
    what: 'Widths across flats of plain and heavy unified nuts, nominal',
    source: 'plain: BS 1768 table 2; heavy: ASME B18.2.2; public tabulations; checked in tests/reference/threads.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-222',
    what: 'Widths across flats of Whitworth nuts: large hexagon for BSW; one size smaller for BSF and for wartime BSW',
    source: 'BS 84 tables and BS 1083:1965, public copies; checked in tests/reference/threads.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-230',
    what: 'Most BSW and UNC sizes share threads per inch and start on each other; 1/2 inch differs, 12 against 13; 55° against 60°',
    source: 'BS 84 and ASME B1.1 tables compared; public notes on Whitworth threads',
    mark: 'read',
  },
  {
    id: 'SRC-231',
    what: 'Limits of likeness of threads: 0.1 mm of diameter, 0.5 % and 10 % of pitch',
    source: 'chosen so that the pairs known to start on each other are found',
    mark: 'set by us',
  },
]
