import type { CutCard } from '@glandkeeper/contract/cut-cards'
import { showCutCard } from '@glandkeeper/contract/cut-cards'
import { sendEvents } from '@glandkeeper/contract/events'
import { confirmSetting } from '@glandkeeper/contract/settings'
import { addValve } from '@glandkeeper/contract/valves'
import { aRepack } from '@glandkeeper/fixtures/a-reading'
import { aValve, type ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { cautions, proof } from './hazards.ts'

/** A valve of tag BH-1, repacked once with this family, or never. */
async function withValve(
  overrides: ValveOverrides,
  family: 'graphite braid' | 'graphite die-formed' | 'other' | null,
): Promise<TestServer> {
  const server = await aServer()
  const valve = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1', ...overrides }) })
  if (family === null) return server
  const repack = aRepack({ valveId: valve.valveId, takenAt: '2026-03-02T07:10:00Z', family })
  await server.expectOk('fitter', sendEvents, { body: { events: [repack] } })
  return server
}

const cardOf = (server: TestServer): Promise<CutCard> => server.expectOk('fitter', showCutCard, { params: { tag: 'BH-1' } })
const opened = ({ open }: CutCard) => open.map(({ says }) => says).join('\n')

describe('the card of a valve that is known throughout', () => {
  it('bore 45, stem 28: space (45 - 28) / 2 = 8.5, ring π · 36.5 = 114.668 mm', async () => {
    const card = await cardOf(await withValve({}, 'graphite braid'))
    expect(card.cord).toMatchObject({ space: 8.5, designation: null })
    expect(card.cut).toMatchObject({ angle: 45, mandrel: 28 })
    expect(card.cut?.length).toBeCloseTo(114.668, 3)
    expect(card.open).toEqual([])
  })

  it('depth 48, entry 3, 27.5 %: 1 + floor((45 - 8.5) / 6.1625) = 6 rings, 7 wraps, gap 20 - (48 - 36.975) = 8.975 ± 5 %', async () => {
    const card = await cardOf(await withValve({}, 'graphite braid'))
    expect(card.rings?.count).toBe(6)
    expect(card.rings?.says.join(' ')).toContain('5 went in last time')
    expect(card.cut?.wraps).toBe(7)
    expect(card.gap?.expected).toBeCloseTo(8.975, 6)
    expect(card.gap?.least).toBeCloseTo(8.975 - 0.05 * 36.975, 6)
    expect(card.gap?.most).toBeCloseTo(8.975 + 0.05 * 36.975, 6)
    expect(card.joints.map(({ clock }) => clock)).toEqual(['12', '3', '6', '9', '12', '3'])
  })

  it('37.92 MPa on 974.68 mm² = 36 960 N; 0.135 · 36 960 / 2 · 12 / 1000 = 29.94 N·m, in steps of 30, 60 and 100 %', async () => {
    const card = await cardOf(await withValve({}, 'graphite braid'))
    expect(card.load?.stress).toBe(37.92)
    expect(card.load?.force).toBeCloseTo(36_960, 0)
    expect(card.load?.torque).toBeCloseTo(29.937, 3)
    expect(card.steps.map(({ torque }) => torque?.toFixed(2) ?? 'by hand')).toEqual([
      'by hand',
      '8.98',
      '17.96',
      '29.94',
      '29.94',
    ])
    expect(card.load?.warning).toBeNull()
  })

  it('says both spanners, the follow-up, the proof, what is dangerous here, every caution, and whose the figures are', async () => {
    const card = await cardOf(await withValve({ access: 'confined space' }, 'graphite braid'))
    expect(card.spanners.map(({ marking }) => marking)).toEqual(['18 mm', '19 mm'])
    expect(card.followUp[0]).toMatch(/^After 3 days/)
    expect(card.proof).toEqual(proof)
    expect(card.cautions).toEqual(cautions)
    const hazards = card.hazards.join('\n')
    for (const hazard of ['Hot, 160', '5\u00a0bar of saturated steam', 'dust', 'asbestos', 'Confined space'])
      expect(hazards).toContain(hazard)
    expect(card.basis).toContain('common practice')
  })

  it('warns of threads that look alike', async () => {
    const card = await cardOf(await withValve({ gland: { studThread: '1/2-12 BSW' } }, 'graphite braid'))
    expect(card.threadCautions.join(' ')).toContain('1/2-13 UNC')
  })

  it('takes the settings of the site', async () => {
    const server = await withValve({}, 'graphite braid')
    const confirm = (key: 'skiveAngle' | 'jointStagger' | 'retightenAfterRepack', seen: number, value: number) =>
      server.expectOk('engineer', confirmSetting, { params: { key }, body: { seen, value } })
    await confirm('skiveAngle', 45, 30)
    await confirm('jointStagger', 90, 120)
    await confirm('retightenAfterRepack', 3, 1)
    const card = await cardOf(server)
    expect(card.cut?.angle).toBe(30)
    expect(card.joints.map(({ clock }) => clock)).toEqual(['12', '4', '8', '12', '4', '8'])
    expect(card.followUp[0]).toMatch(/^After 1 day /)
  })
})

describe('what is not known', () => {
  it('a valve without bore has no cord, no rings, no gap and no torque, and says to measure', async () => {
    const card = await cardOf(await withValve({ gland: { boxBore: null } }, 'graphite braid'))
    expect(card).toMatchObject({ cord: null, rings: null, cut: null, gap: null, load: null, joints: [] })
    expect(opened(card)).toBe('bore not measured: measure before cutting')
    expect(card.steps).toHaveLength(1)
  })

  it.each([
    [{ gland: { boxDepth: null } }, 'box depth not measured', { rings: null, gap: null }],
    [{ gland: { noseLength: null } }, 'nose of the follower not measured', { rings: null, gap: null }],
    [{ gland: { studThread: null } }, 'stud thread not recorded', { load: null, spanners: [] }],
    [{ gland: { studCount: null } }, 'number of studs not recorded', { load: null }],
    [{ pressure: null }, 'pressure not recorded', { load: null }],
  ] as const)('%o is left open: %s', async (overrides, says, left) => {
    const card = await cardOf(await withValve(overrides, 'graphite braid'))
    expect(opened(card)).toContain(says)
    expect(card).toMatchObject(left)
    expect(card.cut?.length).toBeCloseTo(114.668, 3)
  })

  it.each([null, 'other'] as const)('packing %s: the length is cut, the count, gap and torque wait', async (family) => {
    const card = await cardOf(await withValve({}, family))
    expect(card).toMatchObject({ family, rings: null, gap: null, load: null })
    expect(opened(card)).toContain('packing family not known')
    expect(card.cut?.length).toBeCloseTo(114.668, 3)
  })

  it('service not recorded is taken for hot and under pressure', async () => {
    const card = await cardOf(await withValve({ temperature: null, pressure: null }, null))
    expect(card.hazards.join('\n')).toMatch(/take it for hot[^]*for under pressure/)
  })
})

it('no torque is printed that would stretch the studs: 2 studs M6 on 37.92 MPa', async () => {
  const card = await cardOf(await withValve({ gland: { studThread: 'M6', studCount: 2 } }, 'graphite braid'))
  expect(card.load).toBeNull()
  expect(opened(card)).toMatch(/\d+ % of the strength of studs of grade 8.8: no torque is given/)
})

it('a torque above the limit of the site comes with a warning', async () => {
  const card = await cardOf(await withValve({ gland: { studThread: 'M8', studCount: 2 } }, 'graphite braid'))
  expect(card.load?.warning).toMatch(/^Stop: that is 87 % of the strength .* above the limit of 70 %/)
})

it('pressed rings are not cut from cord', async () => {
  const card = await cardOf(await withValve({}, 'graphite die-formed'))
  expect(card.cut).toBeNull()
  expect(card.cutNotes[0]).toContain('come to size')
  expect(card.rings?.count).toBeGreaterThan(0)
})

it('refuses a valve nobody knows', async () => {
  const server = await aServer()
  const answer = await server.call('fitter', showCutCard, { params: { tag: 'NO-1' } })
  expect(answer).toMatchObject({ status: 404, problem: { code: 'valve/unknown' } })
})
