import type { Source } from '../source.ts'

/** Sources of gland load, torque, studs and stem friction. */
export const loadSources: readonly Source[] = [
  {
    id: 'SRC-401',
    what: 'Required gland stress: 1.5 times system pressure, at least 3,800 psi die-formed or 5,500 psi braided',
    source: 'one torque sheet of 1996; a default to be edited; checked in tests/reference/load.test.ts',
    mark: 'common practice, no source',
  },
  { id: 'SRC-402', what: 'Area of an annulus', source: 'geometry', mark: 'worked out' },
  {
    id: 'SRC-403',
    what: 'Gland load: stress times area, shared by the studs',
    source: 'statics; checked in tests/reference/load.test.ts',
    mark: 'worked out',
  },
  {
    id: 'SRC-404',
    what: 'Torque of a nut: nut factor times load times stud diameter',
    source: 'FSA Sealing Sense on gland torque (form and in-lb / 12); checked in tests/reference/load.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-405',
    what: 'Nut factors dry 0.20 to 0.30, oiled 0.15 to 0.18, paste 0.11 to 0.16; usual values are their middles',
    source: 'handbook figures; only 0.2 was read; defaults to be edited',
    mark: 'from memory',
  },
  {
    id: 'SRC-406',
    what: 'Torque in steps of 30, 60 and 100 %',
    source: 'practice of the trade; a default to be edited',
    mark: 'common practice, no source',
  },
  {
    id: 'SRC-407',
    what: 'Proof stress: 4.6 225, 5.8 380, 8.8 580 to 16 mm and 600 above, 10.9 830, 12.9 970 MPa',
    source: 'ISO 898-1, public tabulation of proof loads over areas; checked in tests/reference/load.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-408',
    what: 'B7 studs to 2-1/2 inches: least yield stress 105 ksi, 724 MPa',
    source: 'ASTM A193, public tabulations; checked in tests/reference/load.test.ts',
    mark: 'read',
  },
  { id: 'SRC-409', what: 'Warning above 70 % of proof stress', source: 'a default to be edited', mark: 'set by us' },
  { id: 'SRC-410', what: 'Stress in a stud: load over stress area', source: 'statics', mark: 'worked out' },
  {
    id: 'SRC-411',
    what: "Lateral ratio of a confined solid from Poisson's ratio",
    source: 'P. Smith and R. W. Zappe, Valve Selection Handbook, p. 21; checked in tests/reference/load.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-412',
    what: 'Axial stress falls exponentially down the set; decay from friction and lateral ratio at bore and stem',
    source: 'shape: Ciortan and Macuta; closed form from memory, equal to the equilibrium of a thin slice',
    mark: 'from memory',
  },
  {
    id: 'SRC-413',
    what: 'Bottom ring presses on the stem at least as hard as the fluid',
    source: 'a default to be edited',
    mark: 'set by us',
  },
  {
    id: 'SRC-414',
    what: 'Stem friction: π d H σ μ Y, Y commonly 0.5',
    source: 'ASME/NRC Pump and Valve Symposium, PVS2017-3518, abstract; checked in tests/reference/load.test.ts',
    mark: 'read',
  },
  { id: 'SRC-415', what: 'Stem friction with falling stress', source: 'integral of SRC-412', mark: 'worked out' },
  {
    id: 'SRC-416',
    what: 'Torque of a power screw with collar',
    source:
      'R. L. Mott, Machine Elements in Mechanical Design, 4th ed., p. 703, Example 17-1 (Acme); collar as in handbooks; checked in tests/reference/load.test.ts',
    mark: 'read',
  },
  {
    id: 'SRC-417',
    what: 'Packing friction of a stem that rises and turns, split along its helix',
    source: 'statics',
    mark: 'worked out',
  },
  {
    id: 'SRC-418',
    what: 'Rim pull of one person 360 N (80 lbf)',
    source: 'seen in purchase specifications; a default to be edited',
    mark: 'common practice, no source',
  },
  { id: 'SRC-419', what: 'Packing may take 30 % of what a drive has', source: 'a default to be edited', mark: 'set by us' },
  {
    id: 'SRC-420',
    what: 'Rim pull: torque over half the wheel diameter; two hands share it',
    source: 'statics',
    mark: 'worked out',
  },
]
