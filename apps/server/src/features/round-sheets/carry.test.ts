import type { SettingValues } from '@glandkeeper/contract/settings'
import { expect, it } from 'vitest'
import { carryFor, type StopToCarryFor } from './carry.ts'
import { carryInWords } from './carry-in-words.ts'

const rules = { cordWaste: 0.1 } as Pick<SettingValues, 'cordWaste'>

interface About {
  tag: string
  standing?: StopToCarryFor['standing']
  family?: string | null
  form?: 'braided' | 'die-formed' | null
  bore?: number | null
  depth?: number | null
  rings?: number | null
  spanners?: [marking: string, acrossFlats: number][]
}

/** A box for a cord of 8 mm round a stem of 28 mm, packed with graphite braid. */
function aStop({
  tag,
  standing = 'book',
  family = 'graphite braid',
  form = 'braided',
  bore = 44,
  depth = 48,
  rings = 6,
  spanners = [
    ['18 mm', 18],
    ['19 mm', 19],
  ],
}: About): StopToCarryFor {
  const space = bore === null ? null : (bore - 28) / 2
  return {
    tag,
    standing,
    card: {
      family,
      form,
      gland: { boxBore: bore, stemDiameter: 28, boxDepth: depth, noseLength: 20 },
      cord: space === null ? null : { space, designation: space === 8 ? '8 mm' : null, size: space === 8 ? 8 : null },
      rings: rings === null ? null : { count: rings, says: [] },
      cut: space === null ? null : { angle: 45, length: Math.PI * (28 + space), mandrel: 28, wraps: 7 },
      spanners: spanners.map(([marking, acrossFlats]) => ({ marking, acrossFlats, hexagon: '' })),
    },
  } as unknown as StopToCarryFor
}

it('spanners of every stop, the likeliest counted apart from the other hexagon, by width', () => {
  const stops = [
    aStop({ tag: 'BM-1', standing: 'ample' }),
    aStop({ tag: 'BM-2' }),
    aStop({
      tag: 'BM-3',
      spanners: [
        ['16 mm', 16],
        ['17 mm', 17],
      ],
    }),
    aStop({ tag: 'BM-4', spanners: [['19 mm', 19]] }),
    aStop({ tag: 'BM-5', spanners: [] }),
  ]
  const { spanners, withoutSpanner } = carryFor(stops, rules)
  expect(spanners.map(({ marking, likely, perhaps }) => [marking, likely, perhaps])).toEqual([
    ['16 mm', 1, 0],
    ['17 mm', 0, 1],
    ['18 mm', 2, 0],
    ['19 mm', 1, 2],
  ])
  expect(withoutSpanner).toEqual(['BM-5'])
})

it('cord for 2 valves: 2 · 7 wraps + a trial ring (π · 36 + 8), a tenth more: (1583.36 + 121.10) · 1.1 = 1874.9 mm, 2 m', () => {
  const { cords } = carryFor([aStop({ tag: 'BM-1' }), aStop({ tag: 'BM-2', standing: 'spent' })], rules)
  expect(cords).toEqual([
    { family: 'graphite braid', section: '8 mm', size: 8, isListed: true, metres: 2, tags: ['BM-1', 'BM-2'] },
  ])
})

it('whole metres are made once for a box of cord, not for each size of ring: 1004.1 + 1128.5 = 2132.5 mm, 3 m and not 4', () => {
  const { cords } = carryFor([aStop({ tag: 'BM-1' }), aStop({ tag: 'BM-2', rings: 7 })], rules)
  expect(cords.map(({ metres }) => metres)).toEqual([3])
})

it('cord of another packing or section is another box', () => {
  const stops = [
    aStop({ tag: 'BM-1' }),
    aStop({ tag: 'BM-2', family: 'PTFE braid' }),
    aStop({ tag: 'BM-3', bore: 45 }),
    aStop({ tag: 'BM-4' }),
  ]
  expect(carryFor(stops, rules).cords.map(({ family, section, isListed, tags }) => [family, section, isListed, tags])).toEqual([
    ['graphite braid', '8 mm', true, ['BM-1', 'BM-4']],
    ['PTFE braid', '8 mm', true, ['BM-2']],
    ['graphite braid', '8.5 mm', false, ['BM-3']],
  ])
})

it('only valves that stand at book or spent are packed for', () => {
  const stops = (['ample', 'watch', 'book', 'spent'] as const).map((standing) => aStop({ tag: standing, standing }))
  expect(carryFor(stops, rules).cords.flatMap(({ tags }) => tags)).toEqual(['book', 'spent'])
})

it('pressed rings are counted, not cut', () => {
  const pressed = (tag: string) => aStop({ tag, family: 'graphite die-formed', form: 'die-formed' })
  const { cords, pressedRings } = carryFor([pressed('BM-1'), pressed('BM-2')], rules)
  expect(cords).toEqual([])
  expect(pressedRings).toEqual([
    { family: 'graphite die-formed', stemDiameter: 28, boxBore: 44, rings: 12, tags: ['BM-1', 'BM-2'] },
  ])
})

it('what nobody knows is asked for before the round, never guessed', () => {
  const stops = [
    aStop({ tag: 'BM-1', bore: null }),
    aStop({ tag: 'BM-2', family: null, form: null, rings: null }),
    aStop({ tag: 'BM-3', depth: null, rings: null }),
    aStop({ tag: 'BM-4', rings: null }),
    aStop({ tag: 'BM-5', bore: null }),
  ]
  expect(carryFor(stops, rules)).toMatchObject({
    cords: [],
    pressedRings: [],
    open: [
      { says: 'bore or stem not measured', tags: ['BM-1', 'BM-5'] },
      { says: 'packing not known', tags: ['BM-2'] },
      { says: 'box depth or nose not measured', tags: ['BM-3'] },
      { says: 'its figures do not go together', tags: ['BM-4'] },
    ],
  })
})

it('is said in lines, each under its name', () => {
  const stops = [
    aStop({ tag: 'BM-1' }),
    aStop({ tag: 'BM-2', bore: 45 }),
    aStop({ tag: 'BM-3', standing: 'ample', spanners: [] }),
  ]
  expect(carryInWords(carryFor(stops, rules)).map(({ name, says }) => [name, says.replaceAll('\u00a0', ' ')])).toEqual([
    ['Spanners', '18 mm: 2 stops · 19 mm: other nuts of 2 stops'],
    ['', 'stud thread not recorded, try at the nut: BM-3'],
    ['For repacks', '2 m of graphite braid, 8 mm: BM-1'],
    ['', '2 m of graphite braid, 8.5 mm, which no listed cord fits: ask the store: BM-2'],
  ])
  expect(carryInWords(carryFor([], rules)).map(({ name, says }) => [name, says.replaceAll('\u00a0', ' ')])).toEqual([
    ['Spanners', 'none known'],
    ['For repacks', 'none likely: no stop stands at book or spent'],
  ])
})
