import type { Calculator } from '@glandkeeper/bench/calculator'
import { calculators } from '@glandkeeper/bench/calculators'
import { stemEffort } from '@glandkeeper/bench/load/stem-effort'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { benchDrawings } from './bench-drawings.ts'
import { effortsOf } from './efforts.ts'

const PHONE = 358

function drawn(calculator: Calculator, changes: Readonly<Record<string, unknown>> = {}, room = PHONE): string {
  const given = calculator.input.parse({ ...calculator.example, ...changes })
  return renderToStaticMarkup(benchDrawings[calculator.name]?.({ given, answer: calculator.compute(given), room }))
}

const named = (name: string) => calculators.find((calculator) => calculator.name === name)

it('every drawing belongs to a calculator', () => {
  for (const name of Object.keys(benchDrawings)) expect(named(name), name).toBeDefined()
})

describe.each(
  calculators.filter(({ name }) => name in benchDrawings).map((calculator) => ({ name: calculator.name, calculator })),
)('the drawing of $name', ({ calculator }) => {
  it.each([PHONE, 620])('says what it shows, in figures, within %i px', (room) => {
    const svgs = [...drawn(calculator, {}, room).matchAll(/<svg width="([\d.]+)" height="([\d.]+)"[^>]*aria-label="([^"]+)"/g)]
    expect(svgs.length).toBeGreaterThan(0)
    for (const [, width, , says] of svgs) {
      expect(Number(width)).toBeLessThanOrEqual(room)
      expect(says).toMatch(/\d/)
    }
    expect(drawn(calculator, {}, room)).not.toMatch(/NaN|undefined|null|Infinity/)
  })
})

it('effort that nothing is set against has no drawing', () => {
  const given = stemEffort.input.parse({ ...stemEffort.example, wheelDiameter: undefined, availableThrust: undefined })
  const answer = stemEffort.compute(given)
  expect(answer.ok && effortsOf(given, answer)).toEqual([])
  expect(drawn(stemEffort, { wheelDiameter: undefined, availableThrust: undefined })).toBe('')
})

it('effort is set against one person, and against what the drive has and may give', () => {
  const given = stemEffort.input.parse({ ...stemEffort.example, availableTorque: 40 })
  const answer = stemEffort.compute(given)
  expect(answer.ok && effortsOf(given, answer).map(({ what, has, allowed }) => [what, has, allowed])).toEqual([
    ['Pull at the rim', 360, null],
    ['Thrust', 20_000, 6000],
    ['Torque', 40, 12],
  ])
})

it('a Whitworth stud has rounded crests, a metric one flat ones', () => {
  const thread = named('stud-thread')
  expect(thread && drawn(thread)).not.toMatch(/d="M4 40[^"]*A/)
  expect(thread && drawn(thread, { studThread: '1/2-12 BSW' })).toMatch(/d="M4 40[^"]*A/)
})

it('a drop one has measured stands before the published ones, and once only', () => {
  const drops = named('drops')
  expect(drops && drawn(drops, { dropVolume: 0.4 })).toMatch(/aria-label="drops of 0.40\smL[^"]*drops of 0.25/)
  expect(
    drops &&
      drawn(drops, { dropVolume: 0.25 })
        .match(/aria-label="[^"]*/)?.[0]
        .match(/drops of 0.25/g),
  ).toHaveLength(1)
})
