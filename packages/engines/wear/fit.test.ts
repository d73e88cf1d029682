import { addDays, days, instant, mm } from '@glandkeeper/units/quantity'
import { seededRandom } from '@glandkeeper/fixtures/random'
import { describe, expect, it } from 'vitest'
import { fitPriors, priorOfGroup } from './fit.ts'
import type { FitLife } from './fit-lives.ts'
import { defaultPrior, unusableIn } from './prior.ts'

const begin = instant(Date.UTC(2020, 0, 1))

/** Lives as the model has them: straight wear, chance of 0.002 mm² a day, a reading error of 0.4 mm, no bed-in to see. */
function lives(seed: number, perGroup: number, logRates: readonly number[], ownShare = 0): FitLife[] {
  const random = seededRandom(seed)
  return logRates.flatMap((logRate, group) =>
    Array.from({ length: perGroup }, (_, nth): FitLife => {
      const valve = `G${group}-${nth >> 1}`
      const own = random.branch(valve).normal(0, Math.sqrt(ownShare) * 0.5)
      const rate = Math.exp(logRate + own + random.normal(0, Math.sqrt(1 - ownShare) * 0.5))
      let level = 15
      const readings = Array.from({ length: 10 }, (__, visit) => {
        if (visit > 0) level -= rate * 80 + random.normal(0, Math.sqrt(0.002 * 80))
        return { at: addDays(begin, days(visit * 80)), reserve: mm(level + random.normal(0, 0.4)) }
      })
      return { group: `G${group}`, valve, life: { readings, nips: [], repackedAt: null, step: mm(0.875) } }
    }),
  )
}

function fitted(given: readonly FitLife[]) {
  const fit = fitPriors({ lives: given })
  if (!fit.ok) throw new Error(fit.problem.detail)
  return fit
}

describe('the fit of priors', () => {
  const given = lives(3, 120, [-4, -5, -6])
  const fit = fitted(given)

  it('finds the rates, their spread, the reading error and the chance in wear that the lives were made with', () => {
    for (const [group, logRate] of [-4, -5, -6].entries()) {
      const prior = priorOfGroup(fit, `G${group}`)
      expect(Math.abs(prior.rate.logRate - logRate)).toBeLessThan(0.2)
      expect(Math.abs(prior.rate.logRateVariance - 0.25)).toBeLessThan(0.12)
      expect(prior).toMatchObject({ origin: 'fitted to the group', lives: 120 })
    }
    expect(Math.sqrt(fit.plant.wear.readingVariance)).toBeCloseTo(0.4, 1)
    expect(Math.abs(Math.log(fit.plant.wear.processVariance / 0.002))).toBeLessThan(0.4)
  })

  it('says what it rests on, and that last readings lie in their 80 % band four times in five', () => {
    expect(fit.quality).toMatchObject({
      lives: 360,
      readings: 3600,
      readingsLeftOut: 0,
      livesTellingRate: 360,
      livesTellingWear: 360,
    })
    expect(fit.quality.hasConverged).toBe(true)
    expect(Math.abs(fit.quality.lastReadingsWithin80! - 0.8)).toBeLessThan(0.07)
  })

  it('the same lives give the same priors to the last bit, and survive JSON', () => {
    expect(fitted(given)).toEqual(fit)
    const stored = JSON.parse(JSON.stringify(fit.groups)) as typeof fit.groups
    expect(stored).toEqual(fit.groups)
    for (const prior of [fit.plant, ...Object.values(fit.groups)]) expect(unusableIn(prior)).toBeNull()
  })

  it('a group not seen gets the mean of the plant, in doubt by the spread between groups', () => {
    const unseen = priorOfGroup(fit, 'constructor')
    expect(unseen).toBe(fit.plant)
    expect(unseen.rate.logRate).toBeCloseTo(-5, 0)
    expect(unseen.rate.logRateMeanVariance).toBeGreaterThan(fit.groups['G1']!.rate.logRateMeanVariance * 10)
  })

  it('a small group leans to the plant more than a large one', () => {
    const few = fitted([...given, ...lives(5, 3, [-8]).map((one) => ({ ...one, group: 'few' }))])
    const many = fitted([...given, ...lives(5, 60, [-8]).map((one) => ({ ...one, group: 'many' }))])
    expect(few.groups['few']!.rate.logRate).toBeGreaterThan(many.groups['many']!.rate.logRate)
    expect(few.groups['few']!.rate.logRateMeanVariance).toBeGreaterThan(many.groups['many']!.rate.logRateMeanVariance)
  })

  it('rates that stay with the valve are seen, at most 0.6; rates that do not are not', () => {
    const stays = fitted(lives(7, 200, [-4.5], 0.9)).plant.valveShare
    const goes = fitted(lives(7, 200, [-4.5], 0)).plant.valveShare
    expect(stays).toBeGreaterThan(0.5)
    expect(stays).toBeLessThanOrEqual(0.6)
    expect(goes).toBeLessThan(0.25)
  })

  it('gross errors are left out and counted, and the reading error stays what it was', () => {
    const spoilt = given.map((one, index) =>
      index % 4 > 0
        ? one
        : {
            ...one,
            life: {
              ...one.life,
              readings: one.life.readings.map((reading, k) =>
                k === 4 ? { ...reading, reserve: mm(reading.reserve + 6) } : reading,
              ),
            },
          },
    )
    const robust = fitted(spoilt)
    expect(robust.quality.readingsLeftOut).toBeGreaterThanOrEqual(85)
    expect(robust.plant.wear.readingVariance / fit.plant.wear.readingVariance).toBeCloseTo(1, 0)
  })

  it('one life with one reading gives the settings, for lack of anything else', () => {
    const [one] = given
    const single = fitted([{ ...one!, life: { ...one!.life, readings: one!.life.readings.slice(0, 1) } }])
    expect(single.plant.rate.logRate).toBeCloseTo(defaultPrior.rate.logRate, 9)
    expect(single.groups['G0']).toMatchObject({ origin: 'fitted to the plant', lives: 0 })
    expect(single.quality.lastReadingsWithin80).toBeNull()
  })

  it('no life is refused by name, and so is a life that cannot be read, with its valve', () => {
    expect(fitPriors({ lives: [] })).toMatchObject({ ok: false, problem: { code: 'fit/no-lives' } })
    const spoilt = { ...given[0]!, life: { ...given[0]!.life, step: mm(0) } }
    const refused = fitPriors({ lives: [spoilt] })
    expect(refused).toMatchObject({ ok: false, problem: { code: 'number/not-positive', field: 'lives' } })
    expect(!refused.ok && refused.problem.detail).toContain('G0-0')
  })

  it('tells its progress from 0 to 1, never backwards', () => {
    const shares: number[] = []
    fitPriors({ lives: given.slice(0, 20), onProgress: (share) => shares.push(share) })
    expect(shares.length).toBeGreaterThan(50)
    expect(shares).toEqual(shares.toSorted((one, other) => one - other))
    expect(shares.at(-1)).toBe(1)
  })

  it('stops when asked, soon and by name', () => {
    let asked = 0
    const stopped = fitPriors({ lives: given, shouldStop: () => (asked += 1) > 30 })
    expect(stopped).toMatchObject({ ok: false, problem: { code: 'fit/stopped' } })
    expect(asked).toBeLessThan(60)
  })
})
