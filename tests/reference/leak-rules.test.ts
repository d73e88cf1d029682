import { readFileSync } from 'node:fs'
import path from 'node:path'
import { lossOfLeak } from '@glandkeeper/engines/leak/loss'
import { repairClock } from '@glandkeeper/engines/leak/rules/clocks'
import { exampleRules } from '@glandkeeper/engines/leak/rules/example-rules'
import { nextMonitoring } from '@glandkeeper/engines/leak/rules/monitoring'
import { type MonitoredValve, percentLeaking, stepByPercent } from '@glandkeeper/engines/leak/rules/percent-leaking'
import type { ScreenedService } from '@glandkeeper/engines/leak/screening'
import { ppmv, ratio } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'

/** Each figure with its source and mark beside it. */
const { screening } = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/leak.json'), 'utf8')) as {
  screening: { id: string; inputs: { SV_ppmv: number }; output: Record<string, number> }[]
}

function ruleOf(key: string) {
  const found = exampleRules.find((example) => example.key === key)
  if (!found) throw new Error(`no example rule ${key}`)
  return found.rule
}

const valves = (leaking: number, all: number): MonitoredValve[] =>
  Array.from({ length: all }, (_, index) => ({ id: String(index), monitored: true, leaks: index < leaking, kind: 'ordinary' }))

function percent(leaking: number, all: number, key: string) {
  const found = percentLeaking({ valves: valves(leaking, all), rule: ruleOf(key) })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

/** 40 CFR 61.242-7: first attempt within 5 calendar days, repair within 15, after the day a leak is detected (law text). */
describe('40 CFR 61.242-7, the days', () => {
  it.each([
    ['2025-02-20', '2025-02-25', '2025-03-07'],
    // A leap year.
    ['2024-02-20', '2024-02-25', '2024-03-06'],
  ])('detected %s: first attempt by %s, repair by %s', (detectedOn, firstAttemptBy, repairBy) => {
    const clock = repairClock({
      detectedOn,
      firstAttemptOn: null,
      repairedOn: null,
      deferred: null,
      today: detectedOn,
      rule: ruleOf('61.242-7'),
    })
    expect(clock).toMatchObject({ ok: true, firstAttemptBy, repairBy })
  })
})

/** 40 CFR 61.242-7 and 63.1006: monthly, quarterly after two successive months without a leak (law text). */
it.each(['61.242-7', '63.1006'])('40 CFR %s: monthly, each quarter after two clean months, monthly after a leak', (key) => {
  const after = (...leaks: boolean[]) => {
    const looks = leaks.map((leaking, month) => ({ on: `2026-0${month + 1}-10`, leaks: leaking }))
    const next = nextMonitoring({ kind: 'ordinary', looks, since: '2026-01-01', rule: ruleOf(key), today: '2026-09-01' })
    return next.ok ? next.everyDays : null
  }
  const [month, quarter] = [28, 90]
  expect([after(), after(false), after(false, false), after(false, false, true)]).toEqual([month, month, quarter, month])
  expect([after(true, false), after(true, false, false)]).toEqual([month, quarter])
})

describe('percent leaking', () => {
  /** 40 CFR 60.483-1: no more than 2.0 percent of valves leaking, leakers over valves (law text); quotients worked out. */
  it('40 CFR 60.483-1: 3 of 150 is 2.0 and not above 2.0; 7 of 300 is 2.333 and above', () => {
    expect(percent(3, 150, '60.483-1')).toMatchObject({ percent: 2, isAbove: false })
    expect(percent(7, 300, '60.483-1').percent?.toFixed(3)).toBe('2.333')
    expect(percent(7, 300, '60.483-1').isAbove).toBe(true)
  })

  /** 40 CFR 65.106: at least the greater of 2 valves or 2 percent (law text). */
  it('40 CFR 65.106: 1 of 60 is 1.667, and 1 of 40 above 2 % but below two valves; 3 of 150 is at least 2 %', () => {
    expect(percent(1, 60, '65.106').percent?.toFixed(3)).toBe('1.667')
    expect(percent(1, 60, '65.106').isAbove).toBe(false)
    expect(percent(1, 40, '65.106')).toMatchObject({ percent: 2.5, isAbove: false })
    expect(percent(2, 40, '65.106').isAbove).toBe(true)
    expect(percent(3, 150, '65.106').isAbove).toBe(true)
  })

  /** Exact limits after Clopper and Pearson, worked out in R 4.2.2. */
  it('3 of 150: exact 95 % limits 0.414 and 5.733 %', () => {
    const { lower, upper } = percent(3, 150, '60.483-1')
    expect([lower?.toFixed(3), upper?.toFixed(3)]).toEqual(['0.414', '5.733'])
  })

  /** 40 CFR 60.483-2 and 264.1062: after 2 consecutive quarters at 2.0 % or less, after 5; above it back (law text). */
  it.each(['60.483-2', '264.1062'])('40 CFR %s: one quarter skipped after two good ones, three after five', (key) => {
    const good = { numerator: 3, denominator: 150 }
    const after = (...history: { numerator: number; denominator: number }[]) => {
      const step = stepByPercent(history, ruleOf(key))
      return step.ok ? step.everyDays : null
    }
    const [month, halfYear, year] = [28, 181, 365]
    expect([after(good), after(good, good), after(good, good, good, good, good)]).toEqual([month, halfYear, year])
    expect(after(good, good, good, good, good, { numerator: 4, denominator: 150 })).toBe(month)
  })
})

/** US EPA, EPA-453/R-95-017, correlations; coefficients read in Quebec Clean Air Regulation Q-2 r.4.1, Schedule E, Table I. */
describe('screening values as losses', () => {
  const services: readonly (readonly [string, ScreenedService])[] = [
    ['socmi_gas', 'SOCMI gas valve'],
    ['socmi_ll', 'SOCMI light liquid valve'],
    ['petroleum', 'petroleum industry valve'],
  ]

  it.each(screening)('$id', ({ inputs, output }) => {
    for (const [key, service] of services) {
      const screened = { screeningValue: ppmv(inputs.SV_ppmv) }
      const loss = lossOfLeak({ by: 'screening', service, screening: screened, meterError: ratio(0.1) })
      if (!loss.ok) throw new Error(loss.problem.detail)
      expect(Math.abs(loss.kgPerHour.middle / (output[key] ?? 0) - 1)).toBeLessThan(1e-5)
      expect(loss).toMatchObject({ method: 'screening correlation', mark: 'read', inValidRange: true })
    }
  })
})
