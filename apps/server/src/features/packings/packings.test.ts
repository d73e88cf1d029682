import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { sendEvents } from '@glandkeeper/contract/events'
import { addFamily, advisePacking, changeFamily, figureNames, listFamilies } from '@glandkeeper/contract/packings'
import { addValve, showValve } from '@glandkeeper/contract/valves'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { siteFamilies } from './index.ts'

type Server = Awaited<ReturnType<typeof aServer>>

const figures = {
  lowestTemperature: -40,
  highestTemperature: 280,
  highestSteamTemperature: 220,
  highestPressure: 120,
  lowestPh: 1,
  highestPh: 13,
  consolidation: 0.22,
  friction: 0.09,
  lateralRatio: 0.7,
  stressFloor: 18,
  usualLife: 1200,
}
const ours = {
  name: 'Graphite in PTFE',
  form: 'braided',
  description: 'What our store keeps since 2024.',
  cautions: ['dust', 'no smoking or hot work'],
  figures,
} as const

const named = async (server: Server, name: string) => {
  const found = (await siteFamilies(server.store.read, server.siteId)).find((family) => family.name === name)
  if (!found) throw new Error(name)
  return found
}
const change = (server: Server, family: string, body: BodyIn<typeof changeFamily>) =>
  server.call('engineer', changeFamily, { params: { family }, body })

describe('the packing families of a site', () => {
  it('are the library until somebody confirms a figure, each figure marked', async () => {
    const server = await aServer()
    const { families } = await server.expectOk('fitter', listFamilies)
    expect(families.length).toBeGreaterThanOrEqual(10)
    for (const family of families) {
      expect(family).toMatchObject({ revision: 0, isOwn: false })
      for (const figure of figureNames) {
        expect(family.figures[figure].mark).toMatch(/from memory|common practice|worked out/)
        expect(family.figures[figure].confirmed).toBeNull()
      }
    }
  })

  it('keep who confirmed a figure, and leave the others on their marks', async () => {
    const server = await aServer()
    const { value } = (await named(server, 'PTFE braid')).figures.friction
    const answer = await change(server, 'PTFE braid', { revision: 0, figures: { friction: value, highestPressure: 80 } })
    expect(answer).toMatchObject({ ok: true, value: { revision: 1 } })
    const after = await named(server, 'PTFE braid')
    const word = { by: 'The engineer', at: server.now.toISOString() }
    expect(after.figures.friction).toEqual({ value, mark: 'from memory', confirmed: word })
    expect(after.figures.highestPressure).toMatchObject({ value: 80, confirmed: word })
    expect(after.figures.usualLife.confirmed).toBeNull()
    const [note] = await server.store.read.registerChange.findMany({ where: { subject: 'site' } })
    expect(note).toMatchObject({
      what: 'packing family changed: PTFE braid',
      before: '{"friction":0.08,"highestPressure":100}',
      after: '{"friction":0.08,"highestPressure":80}',
    })
  })

  it('changed from an old page, or at once by two, are changed by one of them', async () => {
    const server = await aServer()
    const lives = [800, 900].map((usualLife) => ({ revision: 0, figures: { usualLife } }))
    const answers = await Promise.all(lives.map((body) => change(server, 'carbon braid', body)))
    expect(answers.map(({ status }) => status).toSorted((a, b) => a - b)).toEqual([200, 409])
    expect(answers.find(({ ok }) => !ok)).toMatchObject({
      problem: { code: 'packing/changed-meanwhile', detail: 'you changed revision 0, the register has 1' },
    })
  })

  it('refuse limits that cross with those that stay, a family nobody knows, and other words for one of the library', async () => {
    const server = await aServer()
    expect(await change(server, 'cotton braid', { revision: 0, figures: { lowestTemperature: 95 } })).toMatchObject({
      status: 422,
      problem: {
        code: 'packing/impossible-limits',
        errors: [{ pointer: '#/figures/highestTemperature' }, { pointer: '#/figures/highestSteamTemperature' }],
      },
    })
    expect(await change(server, 'cotton wool', { revision: 0, figures: {} })).toMatchObject({
      status: 404,
      problem: { code: 'packing/unknown' },
    })
    const about = { form: 'braided', description: 'harmless', cautions: [] } satisfies BodyIn<typeof changeFamily>['about']
    expect(await change(server, 'lead-cased', { revision: 0, figures: {}, about })).toMatchObject({
      status: 409,
      problem: { code: 'packing/not-own' },
    })
    expect(await change(server, 'cotton braid', { revision: 0, figures: { friction: 9 } })).toMatchObject({
      status: 422,
      problem: { code: 'request/invalid', errors: [{ pointer: '#/figures/friction' }] },
    })
    expect(await server.store.read.registerChange.count()).toBe(0)
    expect(await named(server, 'cotton braid')).toMatchObject({ revision: 0 })
  })

  it('write nothing when nothing is named', async () => {
    const server = await aServer()
    expect(await change(server, 'cotton braid', { revision: 0, figures: {} })).toMatchObject({
      ok: true,
      value: { revision: 0 },
    })
    expect(await server.store.read.registerChange.count()).toBe(0)
  })
})

describe('a family of the site’s own', () => {
  it('stands in the list on the word of who added it, and may be put in other words', async () => {
    const server = await aServer()
    const added = await server.expectOk('planner', addFamily, { body: { ...ours, cautions: [...ours.cautions] } })
    expect(added).toMatchObject({ name: 'Graphite in PTFE', isOwn: true, revision: 1 })
    expect(added.figures.stressFloor).toEqual({
      value: 18,
      mark: null,
      confirmed: { by: 'The planner', at: server.now.toISOString() },
    })
    const about = { form: 'die-formed', description: 'Pressed.', cautions: ['dust'] } satisfies BodyIn<
      typeof changeFamily
    >['about']
    expect(await change(server, ours.name, { revision: 1, figures: { friction: 0.1 }, about })).toMatchObject({
      ok: true,
      value: {
        form: 'die-formed',
        description: 'Pressed.',
        cautions: ['dust'],
        revision: 2,
        figures: { friction: { value: 0.1 } },
      },
    })
    const notes = await server.store.read.registerChange.findMany({ where: { subject: 'site' }, orderBy: { id: 'asc' } })
    expect(notes.map(({ what }) => what)).toEqual([
      'packing family added: Graphite in PTFE',
      'packing family changed: Graphite in PTFE',
    ])
  })

  it('needs a name that nobody else has, whatever its capitals, and every figure', async () => {
    const server = await aServer()
    for (const name of ['ptfe BRAID', 'Unknown']) {
      expect(await server.call('planner', addFamily, { body: { ...ours, cautions: [], name } })).toMatchObject({
        status: 409,
        problem: { code: 'packing/name-taken' },
      })
    }
    const { usualLife: _, ...fewer } = figures
    expect(await server.call('planner', addFamily, { body: { ...ours, cautions: [], figures: fewer as never } })).toMatchObject({
      status: 422,
      problem: { errors: [{ pointer: '#/figures/usualLife' }] },
    })
    expect(
      await server.call('planner', addFamily, { body: { ...ours, cautions: [], figures: { ...figures, highestPh: 1 } } }),
    ).toMatchObject({ status: 422, problem: { code: 'packing/impossible-limits' } })
    expect((await siteFamilies(server.store.read, server.siteId)).some((family) => family.isOwn)).toBe(false)
  })

  it('is not seen from another site', async () => {
    const server = await aServer()
    await server.expectOk('planner', addFamily, { body: { ...ours, cautions: [] } })
    await server.store.write((write) =>
      write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: server.now } }),
    )
    expect((await siteFamilies(server.store.read, 'other')).some((family) => family.isOwn)).toBe(false)
  })
})

describe('the advice for a valve', () => {
  async function packedValve(server: Server, family: string | null, overrides: Parameters<typeof aValve>[0] = {}) {
    await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1', ...overrides }) })
    const { valve } = await server.expectOk('fitter', showValve, { params: { tag: 'BH-1' } })
    if (family === null) return
    const event = {
      id: '019a0000-0000-7000-8000-0000000000a1',
      version: 1,
      valveId: valve.valveId,
      takenAt: '2026-05-01T08:00:00+01:00',
      device: 'test',
      kind: 'packing.renewed',
      family,
    }
    const { outcomes } = await server.expectOk('fitter', sendEvents, { body: { events: [event] } })
    expect(outcomes).toMatchObject([{ outcome: 'accepted' }])
  }
  const advice = (server: Server) => server.expectOk('fitter', advisePacking, { params: { tag: 'BH-1' } })

  it('says that natural fibre in steam of 160 °C is outside its limits, by how much, and what would suit', async () => {
    const server = await aServer()
    await packedValve(server, 'natural fibre braid')
    const { fitted, ranking, service } = await advice(server)
    expect(service).toMatchObject({ fluid: 'saturated steam', temperature: 160, pressure: 5 })
    expect(fitted).toMatchObject({
      name: 'natural fibre braid',
      verdict: 'outside its limits',
      reasons: [{ code: 'temperature/over', detail: '160\u00a0°C is 70\u00a0°C over its limit of 90\u00a0°C' }, {}],
    })
    expect(fitted?.mostUsed).toBeGreaterThan(1)
    expect(ranking[0]).toMatchObject({ name: 'graphite die-formed', verdict: 'suitable' })
    expect(ranking.at(-1)?.verdict).toBe('outside its limits')
  })

  it('follows the figures the site has confirmed, and ranks its own families', async () => {
    const server = await aServer()
    await packedValve(server, 'natural fibre braid')
    await change(server, 'natural fibre braid', { revision: 0, figures: { highestSteamTemperature: 165 } })
    await server.expectOk('planner', addFamily, { body: { ...ours, cautions: [] } })
    const { fitted, ranking } = await advice(server)
    expect(fitted).toMatchObject({ verdict: 'suitable', reasons: [{ code: 'temperature/near' }, {}] })
    expect(ranking.map(({ name }) => name)).toContain('Graphite in PTFE')
  })

  it('is not known without temperature, and never suitable then', async () => {
    const server = await aServer()
    await packedValve(server, 'PTFE braid', { temperature: null })
    const { fitted, ranking } = await advice(server)
    expect(fitted).toMatchObject({
      verdict: 'not known',
      reasons: [{ code: 'temperature/not-known', detail: 'the temperature of the valve is not recorded' }, {}],
    })
    expect(ranking.filter(({ verdict }) => verdict === 'suitable')).toEqual([])
  })

  it('says so where the packing is unknown, or nothing is packed, or there is no valve', async () => {
    const server = await aServer()
    await packedValve(server, 'unknown')
    expect((await advice(server)).fitted).toMatchObject({ verdict: 'not known', reasons: [{ code: 'family/not-known' }] })
    const bare = await aServer()
    await packedValve(bare, null)
    expect((await advice(bare)).fitted).toBeNull()
    expect(await bare.call('fitter', advisePacking, { params: { tag: 'BH-2' } })).toMatchObject({ status: 404 })
  })
})
