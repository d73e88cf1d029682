import { degrees, mm } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jointPositions } from './joints.ts'

/** Any double at all, and often enough one that a gland could have. */
const anyNumber = fc.oneof(fc.double(), fc.double({ min: 0.1, max: 200, noNaN: true }))

const placed = (rings: number, stagger: number) => {
  const joints = jointPositions({ rings, stagger: degrees(stagger) })
  if (!joints.ok) throw new Error(joints.problem.detail)
  return joints
}
const clocks = (rings: number, stagger: number) => placed(rings, stagger).joints.map(({ clock }) => clock)
const codes = (rings: number, stagger: number) => placed(rings, stagger).findings.map(({ code }) => code)

describe('joints on the clock, first ring in at 12', () => {
  it('by 90°: 12, 3, 6, 9, 12', () => expect(clocks(5, 90)).toEqual(['12', '3', '6', '9', '12']))
  it('by 120°: 12, 4, 8, 12', () => expect(clocks(4, 120)).toEqual(['12', '4', '8', '12']))
  it('whole turns are left out: 4 · 100 = 400 is 40', () => expect(placed(5, 100).joints[4]!.angle).toBe(40))
  it('by 180°: 12, 6, 12', () => expect(clocks(3, 180)).toEqual(['12', '6', '12']))
  it('by 45°: 1:30 and 4:30 between; by 15° 12:30', () => {
    expect(clocks(4, 45)).toEqual(['12', '1:30', '3', '4:30'])
    expect(clocks(2, 15)).toEqual(['12', '12:30'])
  })
  it('by 359° the second is at 12 again, not at 24', () => expect(clocks(2, 359)).toEqual(['12', '12']))
})

describe('what stands out', () => {
  it.each([
    [4, 90, []],
    [6, 120, []],
    [5, 180, ['joints/line-up']],
    [2, 180, []],
    [1, 30, []],
    [2, 89, ['joints/neighbours-too-close']],
    [4, 300, ['joints/neighbours-too-close']],
    [3, 5, ['joints/neighbours-too-close', 'joints/line-up']],
    [3, 174, ['joints/line-up']],
    [3, 172, []],
  ])('%s rings by %s°: %s', (rings, stagger, expected) => expect(codes(rings, stagger)).toEqual(expected))

  it('neighbours are apart the nearer way round: 270 is 90', () => {
    expect(placed(3, 270).neighboursApart).toBe(90)
    expect(placed(1, 90).neighboursApart).toBeNull()
  })
})

it.each([
  ['no rings', { rings: 0, stagger: degrees(90) }, 'number/not-a-count', 'rings'],
  ['half a ring', { rings: 1.5, stagger: degrees(90) }, 'number/not-a-count', 'rings'],
  ['no stagger', { rings: 3, stagger: degrees(0) }, 'joints/stagger-out-of-range', 'stagger'],
  ['a whole turn', { rings: 3, stagger: degrees(360) }, 'joints/stagger-out-of-range', 'stagger'],
])('%s is refused', (_, input, code, field) => {
  expect(jointPositions(input)).toMatchObject({ ok: false, problem: { code, field } })
})

it('any doubles give angles from 0 to below 360 or a named problem', () => {
  fc.assert(
    fc.property(
      fc.oneof(anyNumber, fc.integer({ min: 1, max: 50 })),
      fc.oneof(fc.double(), fc.integer({ min: -10, max: 400 })),
      (rings, stagger) => {
        const joints = jointPositions({ rings, stagger } as never)
        if (!joints.ok) {
          expect(joints.problem.code).toMatch(/\w\/\w/)
          return
        }
        for (const { angle, clock } of joints.joints) {
          expect(angle).toBeGreaterThanOrEqual(0)
          expect(angle).toBeLessThan(360)
          expect(clock).toMatch(/^([1-9]|1[0-2])(:30)?$/)
        }
      },
    ),
  )
})

it('a stagger and its mirror image place joints mirrored and find the same', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 12 }), fc.integer({ min: 1, max: 359 }), (rings, stagger) => {
      const mirrored = placed(rings, 360 - stagger)
      placed(rings, stagger).joints.forEach(({ angle }, index) => {
        expect((angle + mirrored.joints[index]!.angle) % 360).toBeCloseTo(0, 9)
      })
      expect(codes(rings, 360 - stagger)).toEqual(codes(rings, stagger))
    }),
  )
})

// @ts-expect-error a bare number is no angle
jointPositions({ rings: 3, stagger: 90 })
// @ts-expect-error millimetres are no angle
jointPositions({ rings: 3, stagger: mm(90) })
