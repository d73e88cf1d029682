import type { Source } from '../source.ts'

const MOBLEY = 'R. K. Mobley, Root Cause Failure Analysis'
const SEALING_SENSE = 'Fluid Sealing Association, Sealing Sense, Pumps & Systems, January 2016'

/** What the figures of this folder, and the reserve they speak of, rest on. */
export const glandSources: readonly Source[] = [
  {
    id: 'SRC-101',
    what: 'Section of packing: half of box bore less shaft diameter',
    source: `${MOBLEY}, pp. 225-226; checked in tests/reference/section.test.ts`,
    mark: 'read',
  },
  {
    id: 'SRC-102',
    what: 'Length of a ring: pi times the diameter at mid-width',
    source: `${MOBLEY}, p. 226 (its example prints 9.43 in for 9.4248 in); checked in tests/reference/section.test.ts`,
    mark: 'read',
  },
  {
    id: 'SRC-103',
    what: 'Adjustment reserve: follower shoulder to box face, less what is kept clear',
    source: 'practice of the trade',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-104',
    what: 'Standard sections, metric and inch',
    source: 'no standard list at hand; editable',
    mark: 'from memory',
  },
  {
    id: 'SRC-105',
    what: 'Packing of 5/16 inch is sold as 8 mm',
    source: 'practice of the trade',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-106',
    what: 'A section a little over the space is rolled thinner, never hammered',
    source: 'practice of the trade',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-107',
    what: 'Roll down by at most 5 % of the section; a section within 2 % of the space fits',
    source: 'settings, editable in each call',
    mark: 'set by us',
  },
  {
    id: 'SRC-108',
    what: 'Mean, ovality and wear of measured diameters; radial clearance is half of the difference of two diameters',
    source: 'geometry',
    mark: 'worked out',
  },
  {
    id: 'SRC-109',
    what: 'Ovality over 2 % and radial clearance over 5 % of the section call for a word',
    source: 'settings, editable in each call',
    mark: 'set by us',
  },
  {
    id: 'SRC-110',
    what: 'Skive cut: offset of the points, section over tangent of the angle; stretch of the outer fibre of a bent cord',
    source: 'geometry',
    mark: 'worked out',
  },
  {
    id: 'SRC-111',
    what: 'A quarter of an inch more in length for bevelled ends, one-inch section of a pump',
    source: `${MOBLEY}, p. 226; checked in tests/reference/section.test.ts`,
    mark: 'read',
  },
  {
    id: 'SRC-112',
    what: 'Wraps to wind on a mandrel: one more than rings to cut',
    source: 'practice of the trade',
    mark: 'common practice, no source',
  },
  { id: 'SRC-113', what: 'Cord needed: pieces, cuts and waste added up', source: 'geometry', mark: 'worked out' },
  {
    id: 'SRC-114',
    what: 'One trial ring for a kit and a tenth of the cord as waste',
    source: 'settings, editable in each call',
    mark: 'set by us',
  },
  {
    id: 'SRC-115',
    what: 'Joints staggered: each 90 to 180 degrees from the one before',
    source: SEALING_SENSE,
    mark: 'read',
  },
  {
    id: 'SRC-116',
    what: 'Joints within 15 degrees of each other line up: half an hour on the clock',
    source: 'setting',
    mark: 'set by us',
  },
  {
    id: 'SRC-117',
    what: 'Loose and consolidated height of a set, rings from depth, gap expected after loading',
    source: 'geometry',
    mark: 'worked out',
  },
  { id: 'SRC-118', what: 'Rings are seated one by one, never as a loose set', source: SEALING_SENSE, mark: 'read' },
  {
    id: 'SRC-119',
    what: 'Present advice is 4 to 6 rings, a rigid spacer filling the rest of a deep box',
    source: 'trade pages agree',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-120',
    what: 'Gap after loading within 5 % of the set height is as expected; tilt over 0.75 mm',
    source: 'settings, editable in each call',
    mark: 'set by us',
  },
  {
    id: 'SRC-121',
    what: 'A top-up ring on hardened rings is a stop-gap; never on a pressurised gland; a die-formed set is not topped up with cord',
    source: 'practice of the trade',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-122',
    what: 'Top up at 2 mm of reserve or less, once in a packing life, before 70 % of the usual life',
    source: 'settings, editable in each call',
    mark: 'set by us',
  },
]
