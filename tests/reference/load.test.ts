import { readFileSync } from 'node:fs'
import path from 'node:path'
import { glandLoad, stressFromLoad } from '@glandkeeper/engines/load/gland-load'
import { nutTorque, stressFromTorque } from '@glandkeeper/engines/load/nut-torque'
import { requiredStress, usualStressRules } from '@glandkeeper/engines/load/required-stress'
import { screwTorque } from '@glandkeeper/engines/load/stem-effort'
import { stemFriction, stemFrictionWithDecay } from '@glandkeeper/engines/load/stem-friction'
import { lateralRatio, stressProfile } from '@glandkeeper/engines/load/stress-profile'
import { proofStress, studUtilisation } from '@glandkeeper/engines/load/stud-strength'
import { bar, degrees, megapascals, mm, newtonMetres, newtons, ratio } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

interface Published<Inputs, Output> {
  readonly id: string
  readonly inputs: Inputs
  readonly output: Output
}
/** Each value stands beside its source and mark. */
const values = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/load.json'), 'utf8')) as {
  readonly requiredStress: readonly Published<{ p_psi: number; family: 'die-formed' | 'braided' }, number>[]
  readonly torque: readonly Published<
    { D_mm: number; d_mm: number; sigma_MPa: number; db_mm: number; n: number; K: number },
    { A_mm2: number; F_N: number; F_bolt_N: number; T_Nm: number }
  >[]
  readonly torqueInInches: readonly Published<
    { D_in: number; d_in: number; sigma_psi: number; db_in: number; n: number; K: number },
    Partial<{ A_in2: number; F_lbf: number; T_inlb: number; T_ftlb: number }>
  >[]
  readonly lateralRatio: readonly Published<{ nu: number }, number>[]
  readonly decay: readonly Published<
    { D: number; d: number; mu: number; K: number; ring_h: number; n: number; sigma0: number },
    {
      beta_per_mm: number
      ratio_per_ring: number
      'under_rings_0..n': number[]
      F_stem_const_N: number
      F_stem_decay_N: number
    }
  >[]
  readonly stemFriction: readonly Published<{ d_in: number; H_in: number; GS_psi: number; mu: number; Y: number }, number>[]
  readonly proofLoads: { readonly grades: readonly string[]; readonly loads: Readonly<Record<string, readonly number[]>> }
  readonly yieldOfB7: { readonly leastYieldKsi: number; readonly upToInches: number }
  readonly powerScrews: readonly (Published<Readonly<Record<string, number>>, number> & {
    readonly mark: string
    readonly inches: boolean
    readonly tolerance: number
  })[]
}

/** Exact by definition: the pound-force and the inch. */
const NEWTONS_PER_POUND = 4.4482216152605
const inches = (value: number) => mm(value * 25.4)
const psi = (value: number) => megapascals((value * NEWTONS_PER_POUND) / 25.4 ** 2)
const psiGauge = (value: number) => bar(10 * psi(value))
const INCH_POUND = (NEWTONS_PER_POUND * 25.4) / 1000

describe('required gland stress, common practice', () => {
  const leastPsi = { 'die-formed': 3800, braided: 5500 }

  it.each(values.requiredStress)('$id: $inputs gives $output psi', ({ inputs, output }) => {
    const found = requiredStress({
      systemPressure: psiGauge(inputs.p_psi),
      pressureFactor: ratio(1.5),
      leastStress: psi(leastPsi[inputs.family]),
    })
    expect(found.ok && found.requiredStress / psi(1)).toBeCloseTo(output, 3)
  })

  it('meets its floor at 2,533.33 psi die-formed and 3,666.67 psi braided', () => {
    for (const [pressure, least] of [
      [3800 / 1.5, 3800],
      [5500 / 1.5, 5500],
    ] as const) {
      const at = (shift: number) =>
        requiredStress({ systemPressure: psiGauge(pressure + shift), pressureFactor: ratio(1.5), leastStress: psi(least) })
      expect([at(-0.01), at(0.01)]).toMatchObject([{ setBy: 'least stress' }, { setBy: 'pressure' }])
    }
  })

  it('ships the two floors in megapascals, rounded to a hundredth', () => {
    expect(usualStressRules['die-formed'].leastStress).toBeCloseTo(psi(3800), 2)
    expect(usualStressRules.braided.leastStress).toBeCloseTo(psi(5500), 2)
  })
})

describe('gland load and torque, worked out from the published formula', () => {
  it.each(values.torque)('$id: $inputs', ({ inputs, output }) => {
    const box = { boxBore: mm(inputs.D_mm), stemDiameter: mm(inputs.d_mm), studCount: inputs.n }
    const load = glandLoad({ ...box, packingStress: megapascals(inputs.sigma_MPa) })
    if (!load.ok) throw new Error(load.problem.detail)
    const torque = nutTorque({ ...box, glandLoad: load.glandLoad, studDiameter: mm(inputs.db_mm), nutFactor: ratio(inputs.K) })
    expectNear(load.area, output.A_mm2, 1e-5)
    expectNear(load.glandLoad, output.F_N, 1e-5)
    expectNear(load.loadPerStud, output.F_bolt_N, 1e-5)
    expectNear(torque.ok ? torque.torque : 0, output.T_Nm, 1e-5)
    expect(stressFromLoad({ ...box, loadPerStud: load.loadPerStud })).toMatchObject({
      packingStress: expect.closeTo(inputs.sigma_MPa, 10) as number,
    })
  })

  it.each(values.torqueInInches)('$id: $inputs', ({ inputs, output }) => {
    const box = { boxBore: inches(inputs.D_in), stemDiameter: inches(inputs.d_in), studCount: inputs.n }
    const load = glandLoad({ ...box, packingStress: psi(inputs.sigma_psi) })
    if (!load.ok) throw new Error(load.problem.detail)
    const nut = { ...box, studDiameter: inches(inputs.db_in) }
    const torque = nutTorque({ ...nut, glandLoad: load.glandLoad, nutFactor: ratio(inputs.K) })
    const inchPounds = torque.ok ? torque.torque / INCH_POUND : 0
    expectNear(load.area / 25.4 ** 2, output.A_in2!, 1e-5)
    expectNear(load.glandLoad / NEWTONS_PER_POUND, output.F_lbf!, 1e-5)
    expectNear(inchPounds, output.T_inlb!, 1e-4)
    expectNear(inchPounds / 12, output.T_ftlb!, 1e-4)
  })

  it('a nut factor of 0.1 gives twice the force of 0.2 at one torque, as the flange article says', () => {
    const nutFactor = { low: ratio(0.1), usual: ratio(0.2), high: ratio(0.2) }
    const box = { boxBore: mm(45), stemDiameter: mm(28), studCount: 2, studDiameter: mm(12) }
    const found = stressFromTorque({ ...box, torque: newtonMetres(24), nutFactor })
    expect(found.ok && found.highest / found.usual).toBeCloseTo(2, 12)
  })
})

describe('lateral ratio of a confined solid, handbook', () => {
  it.each(values.lateralRatio)('$id: $inputs gives $output', ({ inputs, output }) => {
    const found = lateralRatio(ratio(inputs.nu))
    expect(found.ok && found.lateralRatio).toBeCloseTo(output, 5)
  })
})

describe('stress down the set, from memory: arithmetic only', () => {
  it.each(values.decay)('$id: $inputs', ({ inputs, output }) => {
    const [friction, lateral] = [ratio(inputs.mu), ratio(inputs.K)]
    const walls = {
      boxBore: mm(inputs.D),
      stemDiameter: mm(inputs.d),
      boreFriction: friction,
      boreLateralRatio: lateral,
      stemFriction: friction,
      stemLateralRatio: lateral,
      packingStress: megapascals(inputs.sigma0),
    }
    const found = stressProfile({ ...walls, ringHeights: Array.from({ length: inputs.n }, () => mm(inputs.ring_h)) })
    if (!found.ok) throw new Error(found.problem.detail)
    expectNear(found.decayRate, output.beta_per_mm, 1e-4)
    expect(found.axialStresses).toHaveLength(inputs.n + 1)
    for (const [index, stress] of found.axialStresses.entries()) expectNear(stress, output['under_rings_0..n'][index]!, 1e-5)
    expectNear(found.axialStresses[1]! / inputs.sigma0, output.ratio_per_ring, 1e-5)
    const setHeight = mm(inputs.n * inputs.ring_h)
    const constant = stemFriction({ ...walls, setHeight, friction, lateralRatio: lateral })
    const decayed = stemFrictionWithDecay({ ...walls, setHeight })
    expectNear(constant.ok ? constant.friction : 0, output.F_stem_const_N, 1e-5)
    expectNear(decayed.ok ? decayed.friction : 0, output.F_stem_decay_N, 1e-5)
  })
})

describe('stem friction, symposium formula', () => {
  it.each(values.stemFriction)('$id: $inputs gives $output lbf', ({ inputs, output }) => {
    const found = stemFriction({
      stemDiameter: inches(inputs.d_in),
      setHeight: inches(inputs.H_in),
      packingStress: psi(inputs.GS_psi),
      friction: ratio(inputs.mu),
      lateralRatio: ratio(inputs.Y),
    })
    expect(found.ok && found.friction / NEWTONS_PER_POUND).toBeCloseTo(output, 2)
  })
})

describe('strength of studs against the published proof loads', () => {
  const cases = Object.entries(values.proofLoads.loads).flatMap(([designation, loads]) =>
    loads.map((load, index) => ({ designation, grade: values.proofLoads.grades[index]!, load })),
  )

  it.each(cases)('$designation $grade is used up at $load N', ({ designation, grade, load }) => {
    const found = studUtilisation({ designation, grade, loadPerStud: newtons(load), utilisationLimit: ratio(0.7) })
    // Areas and loads of the table have three figures, some of them cut off: 20.1 · 580 = 11,658 stands as 11,600.
    expectNear(found.ok ? found.utilisation : 0, 1, 7e-3)
  })

  it('B7 yields at 105 ksi up to 2-1/2 inches', () => {
    const { leastYieldKsi, upToInches } = values.yieldOfB7
    expect(proofStress('B7', inches(upToInches))).toMatchObject({ basis: 'yield' })
    const found = proofStress('B7', inches(1))
    expectNear(found.ok ? found.proofStress : 0, psi(1000 * leastYieldKsi), 1e-3)
  })
})

describe('torque of a power screw against textbook examples', () => {
  it.each(values.powerScrews)('$id, $mark: $inputs gives $output', ({ inputs, output, inches: inInches, tolerance }) => {
    const length = inInches ? inches : mm
    const { thrust, meanDiameter, lead, flankHalfAngle, threadFriction, collarDiameter, collarFriction } = inputs
    const found = screwTorque(newtons(thrust! * (inInches ? NEWTONS_PER_POUND : 1)), {
      meanDiameter: length(meanDiameter!),
      lead: length(lead!),
      flankHalfAngle: degrees(flankHalfAngle!),
      threadFriction: ratio(threadFriction!),
      collar: collarDiameter === undefined ? null : { meanDiameter: mm(collarDiameter), friction: ratio(collarFriction!) },
    })
    expectNear(found.ok ? found.torque / (inInches ? INCH_POUND : 1) : 0, output, tolerance)
  })
})

function expectNear(value: number, published: number, relative: number): void {
  expect(Math.abs(value / published - 1), `${value} beside ${published}`).toBeLessThan(relative)
}
