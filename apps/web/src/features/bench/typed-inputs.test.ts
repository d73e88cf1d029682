import { topUp } from '@glandkeeper/bench/cut/top-up'
import { ringLength } from '@glandkeeper/bench/cut/ring-length'
import { wornParts } from '@glandkeeper/bench/cut/worn-parts'
import { glandTorque } from '@glandkeeper/bench/load/gland-torque'
import { calculators } from '@glandkeeper/bench/calculators'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { startingTexts } from './starting-texts.ts'
import { readAndCompute } from './typed-inputs.ts'

const plain = (text: string | undefined) => text?.replaceAll('\u00a0', ' ')

describe('figures typed freely', () => {
  it('are read in the unit they carry, and the page says how', () => {
    const reading = readAndCompute(ringLength, { stemDiameter: '1-1/8 in', section: '5/16', cutAngle: '90' })
    expect(reading.faults).toEqual({})
    expect(plain(reading.readAs['stemDiameter'])).toBe('28.575 mm')
    expect(plain(reading.readAs['section'])).toBe('7.938 mm')
    // Handbook arithmetic in inches: pi (1.125 + 0.3125) = 4.5160 in.
    expect((reading.answer?.['edgeLength'] as number) / 25.4).toBeCloseTo(4.516, 4)
  })

  it('are named one by one when they are missing, no figures, or beyond what is possible', () => {
    const { answer, faults } = readAndCompute(glandTorque, {
      boxBore: '',
      stemDiameter: 'wide',
      pressure: '5000',
      studThread: 'M12',
    })
    expect(answer).toBeNull()
    expect(faults['boxBore']).toBe('needed')
    expect(faults['stemDiameter']).toContain('write a figure')
    expect(faults['pressure']).toContain('at most 1000 bar')
    expect(faults['studThread']).toBeUndefined()
  })

  it('take an engine’s refusal to the box it belongs to', () => {
    const reading = readAndCompute(ringLength, { stemDiameter: '28', section: '8.5', cutAngle: '45', allowance: '-500' })
    expect(reading.faults['allowance']).toContain('leaves no ring')
  })

  it('may be several in one box', () => {
    const texts = { stemDiameters: '27.9; 1.1 in', boreDiameters: '45 45.2' }
    const reading = readAndCompute(wornParts, texts)
    expect(reading.faults).toEqual({})
    expect(reading.answer?.['stemOvality']).toBeCloseTo(27.94 - 27.9, 9)
    expect(readAndCompute(wornParts, { ...texts, boreDiameters: '45; wide' }).faults['boreDiameters']).toContain('write a figure')
  })

  it('never throw and never give both an answer and a fault, whatever is typed', () => {
    const typed = fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom('28', '5/16 in', '-1', '1e9', '90', 'M12', 'yes'))
    fc.assert(
      fc.property(fc.constantFrom(...calculators), fc.array(typed, { minLength: 14, maxLength: 14 }), (calculator, texts) => {
        const names = Object.keys(calculator.input.shape)
        const reading = readAndCompute(calculator, Object.fromEntries(names.map((name, index) => [name, texts[index] ?? ''])))
        expect(reading.answer === null || (Object.keys(reading.faults).length === 0 && reading.problem === null)).toBe(true)
      }),
    )
  })
})

it('a valve of the register fills in its own figures; what it does not know stays empty, with nothing of the example', () => {
  const gland = { boxBore: 60, stemDiameter: 40, studThread: 'M16', studCount: null, studGrade: '8.8', lubrication: 'paste' }
  const history = {
    valve: { gland: { ...gland, noseLength: 22 }, temperature: null, pressure: null, stemMovement: 'rising', phase: 'steam' },
    state: { gapLeft: 5, gapRight: 6, reserve: 2, packedOn: '2026-01-01T00:00:00Z' },
    lives: [{ to: null, rings: 6, family: 'PTFE braid' }],
    timeline: [],
  }
  const family = {
    form: 'braided',
    figures: Object.fromEntries(
      ['stressFloor', 'consolidation', 'friction', 'lateralRatio', 'usualLife'].map((name, index) => [
        name,
        { value: index + 1 },
      ]),
    ),
  }
  const known = { history, family, now: new Date('2026-01-11T00:00:00Z') } as unknown as Parameters<typeof startingTexts>[1]
  const { texts, fromValve } = startingTexts(glandTorque, known)
  expect(texts).toMatchObject({
    boxBore: '60',
    studThread: 'M16',
    studCount: '',
    pressure: '',
    leastStress: '1',
    pressureFactor: '1.5',
  })
  expect([fromValve.has('boxBore'), fromValve.has('pressure'), fromValve.has('pressureFactor')]).toEqual([true, false, false])
  expect(startingTexts(ringLength, known).texts).toMatchObject({ stemDiameter: '40', section: '10', cutAngle: '45' })
  expect(startingTexts(topUp, known).texts).toMatchObject({
    reserve: '2',
    followerEntry: '17',
    ageOfPacking: '10',
    topUpRings: '0',
  })
})

it('nought has no counterpart in inches worth saying', () => {
  expect(readAndCompute(ringLength, { stemDiameter: '28', section: '8', allowance: '0' }).readAs['allowance']).toBeUndefined()
})

it('each calculator opens with an answer', () => {
  for (const calculator of calculators) {
    const { answer, faults } = readAndCompute(calculator, startingTexts(calculator, null).texts)
    expect([calculator.name, faults, answer !== null]).toEqual([calculator.name, {}, true])
  }
})
