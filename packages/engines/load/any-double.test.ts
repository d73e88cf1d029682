import { mm, type Quantity, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { packingShare, rimPull } from './drive-limits.ts'
import { glandLoad, packingArea, stressFromLoad } from './gland-load.ts'
import { nutTorque, stressFromTorque, torqueSteps } from './nut-torque.ts'
import { requiredStress } from './required-stress.ts'
import { screwTorque, stemEffort, type StemScrew } from './stem-effort.ts'
import { stemFriction, stemFrictionWithDecay } from './stem-friction.ts'
import { bottomRingHolds, decayRate, lateralRatio, type PackingWalls, stressProfile } from './stress-profile.ts'
import { proofStress, studStress, studUtilisation } from './stud-strength.ts'

/** Any double in the place of any quantity: what a type cannot keep out of a running program. */
type Any = Quantity<never>
type Call = (a: Any, b: Any, c: Any, d: Any, e: Any, f: Any, g: Any, h: Any) => { readonly ok: boolean }

const walls = (a: Any, b: Any, c: Any, d: Any, e: Any, f: Any): PackingWalls => ({
  boxBore: a,
  stemDiameter: b,
  boreFriction: c,
  boreLateralRatio: d,
  stemFriction: e,
  stemLateralRatio: f,
})
const screw = (a: Any, b: Any, c: Any, d: Any, e: Any, f: Any): StemScrew => ({
  meanDiameter: a,
  lead: b,
  flankHalfAngle: c,
  threadFriction: d,
  collar: { meanDiameter: e, friction: f },
})

const calls: Readonly<Record<string, Call>> = {
  requiredStress: (a, b, c) => requiredStress({ systemPressure: a, pressureFactor: b, leastStress: c }),
  packingArea: (a, b) => packingArea({ boxBore: a, stemDiameter: b }),
  glandLoad: (a, b, c, d) => glandLoad({ boxBore: a, stemDiameter: b, packingStress: c, studCount: d }),
  stressFromLoad: (a, b, c, d) => stressFromLoad({ boxBore: a, stemDiameter: b, loadPerStud: c, studCount: d }),
  nutTorque: (a, b, c) => nutTorque({ glandLoad: a, studCount: 2, studDiameter: b, nutFactor: c }),
  torqueSteps: (a, b) => torqueSteps(a, [b, ratio(1)]),
  stressFromTorque: (a, b, c, d, e, f, g) =>
    stressFromTorque({
      boxBore: a,
      stemDiameter: b,
      torque: c,
      studCount: 2,
      studDiameter: d,
      nutFactor: { low: e, usual: f, high: g },
    }),
  proofStress: (a) => proofStress('8.8', a),
  studStress: (a) => studStress('M12', a),
  studUtilisation: (a, b) => studUtilisation({ designation: 'M12', grade: '8.8', loadPerStud: a, utilisationLimit: b }),
  lateralRatio: (a) => lateralRatio(a),
  decayRate: (a, b, c, d, e, f) => decayRate(walls(a, b, c, d, e, f)),
  stressProfile: (a, b, c, d, e, f, g, h) =>
    stressProfile({ ...walls(a, b, c, d, e, f), packingStress: g, ringHeights: [h, mm(8), h] }),
  bottomRingHolds: (a, b, c, d) =>
    bottomRingHolds({ bottomStress: a, stemLateralRatio: b, systemPressure: c, pressureFactor: d }),
  stemFriction: (a, b, c, d, e) =>
    stemFriction({ stemDiameter: a, setHeight: b, packingStress: c, friction: d, lateralRatio: e }),
  stemFrictionWithDecay: (a, b, c, d, e, f, g, h) =>
    stemFrictionWithDecay({ ...walls(a, b, c, d, e, f), packingStress: g, setHeight: h }),
  screwTorque: (a, b, c, d, e, f, g) => screwTorque(a, screw(b, c, d, e, f, g)),
  stemEffort: (a, b, c, d, e, f, g, h) =>
    stemEffort({ motion: 'rising and turning', stemDiameter: a, friction: b, screw: screw(c, d, e, f, g, h) }),
  'stemEffort, turning': (a, b) => stemEffort({ motion: 'turning', stemDiameter: a, friction: b, screw: null }),
  rimPull: (a, b, c) => rimPull({ torque: a, wheelDiameter: b, rimPullLimit: c }),
  packingShare: (a, b, c) => packingShare<'N'>({ packingEffort: a, availableEffort: b, shareLimit: c }),
}

/** Half of them likely ones, so that a call is not refused at its first input every time. */
const anyDouble = fc.oneof(
  fc.double({ min: 0, max: 100 }),
  fc.double({ min: 0 }),
  fc.double(),
  fc.constantFrom(Number.NaN, Infinity, -Infinity, -0, Number.MAX_VALUE, Number.MIN_VALUE, 1, 2),
)

it.each(Object.entries(calls))('%s gives finite figures or a named problem, whatever doubles come', (_name, call) => {
  fc.assert(
    fc.property(fc.array(anyDouble, { minLength: 8, maxLength: 8 }), (values) => {
      const result = call(...(values as unknown as Parameters<Call>))
      if (!result.ok) {
        const { problem } = result as unknown as { problem: { code: string; field: string; detail: string } }
        expect(problem.code).toMatch(/^[a-z]+\/[a-z-]+$/)
        expect(problem.field).toMatch(/^[a-zA-Z]+$/)
        expect(problem.detail).not.toBe('')
      } else expect(numbersIn(result).filter((figure) => !(Number.isFinite(figure) && figure >= 0))).toEqual([])
    }),
    { numRuns: 500 },
  )
})

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : []
}
