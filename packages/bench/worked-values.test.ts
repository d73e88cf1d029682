import { describe, expect, it } from 'vitest'
import type { Calculator } from './calculator.ts'
import { cord } from './cut/cord.ts'
import { loadedGap } from './cut/loaded-gap.ts'
import { section } from './cut/section.ts'
import { glandTorque } from './load/gland-torque.ts'
import { stemEffort } from './load/stem-effort.ts'
import { stressProfile } from './load/stress-profile.ts'
import { airLoss } from './leak/air.ts'
import { drops } from './leak/drops.ts'
import { steamCost } from './leak/yearly-cost.ts'
import { waterLoss } from './leak/water.ts'
import { whichPacking } from './packing/which-packing.ts'
import { studThread } from './threads/stud-thread.ts'

const answer = (calculator: Calculator, given: object): Record<string, unknown> => {
  const outcome = calculator.compute(calculator.input.parse(given))
  if (!outcome.ok) throw new Error(outcome.problem.detail)
  return outcome
}

describe('worked by hand, through the calculator', () => {
  it('a 45 mm bore on a 28 mm stem leaves 8.5 mm; 8 mm cord leaves 0.5 mm on each side', () => {
    const { space, take, nearest } = answer(section, { boxBore: 45, stemDiameter: 28 })
    expect(space).toBe(8.5)
    expect(take).toBeNull()
    expect(nearest).toMatchObject([{ designation: '8 mm', verdict: 'too small: leaves a gap of 0.50\u00a0mm on each side' }, {}])
  })

  it('35 on 22 mm at 20 MPa, two M10, nut factor 0.2: 581.98 mm², 11 639.6 N, 11.64 N·m', () => {
    const given = { boxBore: 35, stemDiameter: 22, pressure: 0, leastStress: 20, studThread: 'M10', studCount: 2, nutFactor: 0.2 }
    const found = answer(glandTorque, given)
    expect(found['area']).toBeCloseTo(581.98, 2)
    expect(found['glandLoad']).toBeCloseTo(11_639.6, 1)
    expect(found['torque']).toBeCloseTo(11.6396, 4)
    expect(found['steps']).toMatchObject([{ share: 0.3 }, { share: 0.6 }, { share: 1 }])
  })

  it('die-formed rings need less than braid: 26.2 against 37.92 MPa, and 1.5 times a high pressure more than either', () => {
    const given = { boxBore: 35, stemDiameter: 22, pressure: 10, studThread: 'M10' }
    expect(answer(glandTorque, { ...given, form: 'die-formed' })['requiredStress']).toBe(26.2)
    expect(answer(glandTorque, { ...given, form: 'braided' })['requiredStress']).toBe(37.92)
    expect(answer(glandTorque, { ...given, pressure: 400 })).toMatchObject({ requiredStress: 60, setBy: 'the pressure' })
  })

  it('five rings of 6.5 mm under 20 MPa keep 12.13 MPa at the bottom and hold the stem with 1 768 N', () => {
    const given = { boxBore: 35, stemDiameter: 22, packingStress: 20, rings: 5, friction: 0.1, lateralRatio: 0.5, pressure: 100 }
    const found = answer(stressProfile, given)
    expect(found['bottomStress']).toBeCloseTo(12.1306, 4)
    expect(found['stemFriction']).toBeCloseTo(1767.65, 1)
    // 0.5 · 12.13 = 6.07 MPa, less than 100 bar.
    expect(found['says']).toHaveLength(1)
  })

  it('1 000 N of packing on a turning 20 mm stem take 10 N·m: 100 N at the rim of a 200 mm wheel', () => {
    const pressed = { setHeight: 20, packingStress: 1000 / (Math.PI * 20 * 20 * 0.1 * 0.5), friction: 0.1, lateralRatio: 0.5 }
    const found = answer(stemEffort, { motion: 'turning', stemDiameter: 20, ...pressed, wheelDiameter: 200, availableTorque: 20 })
    expect(found['torque']).toBeCloseTo(10, 9)
    expect(found['rimPull']).toBeCloseTo(100, 9)
    expect(found['shareOfTorque']).toBeCloseTo(0.5, 9)
    expect(found['says']).toEqual(['the packing takes more of the drive than it should'])
  })

  it('a rising stem without its screw has a thrust, and no torque, pull or share of it', () => {
    const given = { motion: 'rising', stemDiameter: 28, setHeight: 42, packingStress: 25, wheelDiameter: 300, availableTorque: 1 }
    expect(answer(stemEffort, given)).toMatchObject({ torque: null, rimPull: null, shareOfTorque: null, shareOfThrust: null })
  })

  it('studs that cannot bear the load get no torque; of studs nobody can read the weakest are assumed', () => {
    const given = { boxBore: 100, stemDiameter: 60, pressure: 500, studThread: 'M8', studCount: 2, studGrade: '4.6' }
    expect(answer(glandTorque, given)).toMatchObject({ torque: null, steps: [] })
    expect(answer(glandTorque, { ...given, studGrade: 'unknown' })).toMatchObject({
      torque: null,
      gradeTaken: expect.stringContaining('4.6'),
    })
  })

  it('the load that smooth nuts could make is judged too: unknown lubrication, M12 of grade 5.8', () => {
    const given = { boxBore: 45, stemDiameter: 28, pressure: 12, studThread: 'M12', studCount: 2, studGrade: '5.8' }
    const { utilisation, utilisationAtMost, says } = answer(glandTorque, given)
    expect((utilisationAtMost as number) / (utilisation as number)).toBeCloseTo(0.2 / 0.11, 9)
    expect(says).toEqual([expect.stringContaining('would stretch the studs')])
  })

  it('a follower on the box loads nothing, however well the gap agrees; one side alone tells no tilt', () => {
    const given = { expectedGap: 1, setHeight: 36 }
    expect(answer(loadedGap, { ...given, gapLeft: 0, gapRight: 0 })['verdict']).toBe('follower on the box')
    expect(answer(loadedGap, { ...given, gapLeft: 1 })['reason']).toContain('the other side was not read')
  })

  it('cord wound on a bar is one wrap more than the rings: 6 valves, 5 rings, 28 mm, 8.5 mm', () => {
    const given = { stemDiameter: 28, section: 8.5, rings: 5, valves: 6, trialRings: 0, wasteShare: 0 }
    expect(answer(cord, given)['needed']).toBeCloseTo(6 * 6 * Math.PI * 36.5, 6)
  })

  it('of a gas nobody knows, a packing that oxygen attacks is not called suitable', () => {
    const { ranking } = answer(whichPacking, { phase: 'gas', temperature: 30, pressure: 3 }) as {
      ranking: { name: string; verdict: string }[]
    }
    expect(ranking.find(({ name }) => name === 'graphite braid')?.verdict).toBe('not known')
  })

  it('half a turn of M12 moves the follower 0.875 mm; both spanners of old plant are named', () => {
    const found = answer(studThread, { studThread: 'M12' })
    expect(found).toMatchObject({ travel: 0.875, spanners: [{ marking: '18 mm' }, { marking: '19 mm' }] })
  })

  it('sixty drops a minute of a quarter millilitre are 21.6 litres a day', () => {
    expect(answer(drops, { dropsPerMinute: 60, dropVolume: 0.25 })['perDay']).toBeCloseTo(21.6, 9)
  })

  it('1 mm at 10 bar loses 1 853 L of water a day: in half a year at 2 for a cubic metre 676', () => {
    const found = answer(waterLoss, { opening: 1, pressure: 10, hours: 4380, price: 2 })
    expect(found['perDay']).toBeCloseTo(1852.85, 1)
    expect(found['cost']).toBeCloseTo((1852.85 / 1000) * 182.5 * 2, 1)
  })

  it('air costs by the thousand cubic metres, steam by the tonne: 10 kg/h all year at 30 are 2 628', () => {
    const air = answer(airLoss, { opening: 1, pressure: 7, hours: 1000, price: 20 })
    expect(air['cost']).toBeCloseTo(((air['freeAir'] as number) * 1000 * 20) / 1000, 9)
    expect(answer(steamCost, { ...steamCost.example })['cost']).toBeCloseTo(2628, 9)
  })
})
