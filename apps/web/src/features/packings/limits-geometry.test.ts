import { figureNames, type SiteFamily } from '@glandkeeper/contract/packings'
import { packingFamilies } from '@glandkeeper/engines/packing/families'
import { describe, expect, it } from 'vitest'
import { limitsFrame } from './limits-geometry.ts'

const families = packingFamilies.map((family) => ({
  ...family,
  isOwn: false,
  revision: 0,
  figures: Object.fromEntries(figureNames.map((name) => [name, { ...family.figures[name], confirmed: null }])),
})) as unknown as SiteFamily[]
const ptfe = families.findIndex(({ name }) => name === 'PTFE braid')

describe.each([358, 700, 1200])('limits drawn %s px wide', (width) => {
  const frame = limitsFrame(families, width)

  it('stay inside the drawing, temperature left of pressure', () => {
    for (const { temperature, pressure, steamX } of frame.rows) {
      expect(temperature.left).toBeGreaterThanOrEqual(0)
      expect(temperature.left).toBeLessThan(temperature.right)
      expect(steamX).toBeGreaterThan(temperature.left)
      expect(temperature.right).toBeLessThan(pressure.left)
      expect(pressure.right).toBeLessThanOrEqual(width)
    }
    expect(frame.height).toBeGreaterThan(frame.rows.at(-1)?.barY ?? Infinity)
  })

  it('share one scale: the bar of PTFE is 460 °C long, one of 200 bar twice one of 100', () => {
    const [one, two] = [frame.temperatureTicks[0], frame.temperatureTicks[1]]
    const perDegree =
      ((two?.x ?? 0) - (one?.x ?? 0)) / (Number(two?.label.replace('−', '-')) - Number(one?.label.replace('−', '-')))
    const bar = frame.rows[ptfe]?.temperature
    expect((bar?.right ?? 0) - (bar?.left ?? 0)).toBeCloseTo(460 * perDegree, 6)
    const rows = new Map(frame.rows.map(({ name, pressure }) => [name, pressure.right - pressure.left]))
    expect(rows.get('graphite braid')! / rows.get('PTFE braid')!).toBeCloseTo(1.5, 9)
  })

  it('are dashed until both ends are confirmed', () => {
    const confirmed = { by: 'P', at: '2026-01-01T00:00:00Z' }
    const mine = families.map((family, index) =>
      index === ptfe
        ? { ...family, figures: { ...family.figures, lowestTemperature: { ...family.figures.lowestTemperature, confirmed } } }
        : family,
    )
    expect(limitsFrame(mine, width).rows[ptfe]?.temperature.isConfirmed).toBe(false)
    const both = mine.map((family) => ({
      ...family,
      figures: { ...family.figures, highestTemperature: { ...family.figures.highestTemperature, confirmed } },
    }))
    expect(limitsFrame(both, width).rows[ptfe]?.temperature.isConfirmed).toBe(true)
  })
})
