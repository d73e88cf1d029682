import { addArea } from '@glandkeeper/contract/areas'
import { printLabels } from '@glandkeeper/contract/labels'
import { retireValve } from '@glandkeeper/contract/valves'
import { describe, expect, inject, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { codesOn } from '../../../testing/printed.ts'
import { MANY_CODES, printed, saidOn, tagsOn } from '../../../testing/printed-labels.ts'
import { add, addLike, withValves } from '../../../testing/valves-alike.ts'
import { newId } from '../../platform/ids.ts'

const isPostgresql = inject('database').provider === 'postgresql'

const refusal = async (server: TestServer, query: string) =>
  (
    await server.app.inject({ url: `${printLabels.path}?${query}`, headers: { cookie: server.cookieOf('fitter') } })
  ).json<object>()

describe('what a label says', () => {
  it('tag in the largest print, description and area in small, and any tag as an address that opens it', async () => {
    const tag = 'ВН 1/ä+2'
    const server = await withValves(1, { tag, description: 'Main steam stop' })
    const [page] = await printed(server)
    const sizeOf = (says: string) => page!.pieces.find((piece) => piece.says === says)?.size ?? 0
    expect(sizeOf(tag)).toBeGreaterThan(1.5 * sizeOf('Main steam stop'))
    expect(sizeOf('Main steam stop')).toBe(sizeOf('Boiler house'))
    expect(sizeOf('Boiler house')).toBeGreaterThan(0)
    expect((await codesOn(page!)).map(({ text }) => text)).toEqual([`http://mill.example/v/${encodeURIComponent(tag)}`])
  })

  it('a description that is too long is cut, and shows it', async () => {
    const said = saidOn(await printed(await withValves(1, { description: 'second group, '.repeat(14) }), 'size=48 x 25'))
    expect(said.at(-2)).toMatch(/…$/)
    expect(said.at(-1)).toBe('Boiler house')
  })

  it('the address is that of the request; the word of a proxy is taken where one is said to be in front, and only there', async () => {
    const forwarded = { 'x-forwarded-proto': 'https', 'x-forwarded-host': 'glands.mill.example', host: '10.0.0.4:4170' }
    const addressIn = async (server: TestServer) => {
      await add(server, { tag: 'BH-1' })
      return (await codesOn((await printed(server, '', forwarded))[0]!))[0]?.text
    }
    expect(await addressIn(await aServer())).toBe('http://10.0.0.4:4170/v/BH-1')
    expect(await addressIn(await aServer({ behindProxy: true }))).toBe('https://glands.mill.example/v/BH-1')
  })
})

describe('which valves get one', () => {
  const area = { code: 'SM', name: 'Stock mill', walkPosition: 5, level: 0 }

  it('all in walking order, those of an area, those with the words, and those with the tags', async () => {
    const server = await withValves(4)
    await server.expectOk('planner', addArea, { body: area })
    await add(server, { tag: 'BH-77', areaCode: 'SM', description: 'Pulper Drain' })
    expect(tagsOn(await printed(server))).toEqual(['BH-77', 'BH-1', 'BH-2', 'BH-3', 'BH-4'])
    expect(tagsOn(await printed(server, 'area=SM'))).toEqual(['BH-77'])
    expect(tagsOn(await printed(server, 'find=drain pulper'))).toEqual(['BH-77'])
    expect(tagsOn(await printed(server, 'tags=BH-4, BH-2'))).toEqual(['BH-2', 'BH-4'])
  })

  it('a retired one gets none', async () => {
    const server = await withValves(2)
    await server.expectOk('planner', retireValve, { params: { tag: 'BH-1' }, body: { revision: 1, reason: 'removed' } })
    expect(tagsOn(await printed(server))).toEqual(['BH-2'])
    expect(await refusal(server, 'tags=BH-1,BH-2')).toMatchObject({
      code: 'valve/unknown',
      detail: expect.stringContaining('BH-1'),
    })
  })

  it('of another site none', async () => {
    const server = await withValves(1)
    const row = (await server.store.read.valve.findFirst())!
    await server.store.write(async (write) => {
      await write.site.create({ data: { ...anotherSite, createdAt: server.now } })
      await write.area.create({ data: { ...anotherArea, siteId: anotherSite.id } })
      await write.valve.create({ data: { ...row, id: newId(), siteId: anotherSite.id, areaId: anotherArea.id, tag: 'BH-99' } })
    })
    expect(tagsOn(await printed(server))).toEqual(['BH-1'])
    expect(await refusal(server, 'area=XX')).toMatchObject({ status: 404, code: 'area/unknown' })
    expect(await refusal(server, 'tags=BH-99')).toMatchObject({ status: 404, code: 'valve/unknown' })
  })

  it.each([
    ['find=nothing like it', 422, 'label/nothing-found'],
    ['area=NO', 404, 'area/unknown'],
    ['tags=BH-1,NO-1', 404, 'valve/unknown'],
    ['size=A4', 422, 'request/invalid'],
    ['tags=BH-1,,', 422, 'request/invalid'],
    ['colour=red', 422, 'request/invalid'],
  ])('%s is refused: %i %s', async (query, status, code) => {
    expect(await refusal(await withValves(1), query)).toMatchObject({ status, code })
  })

  // Paper is the same from either database.
  it.skipIf(isPostgresql)('500 are printed on 21 sheets, and 501 refused', { timeout: MANY_CODES }, async () => {
    const server = await withValves(500)
    const pages = await printed(server)
    expect([pages.length, new Set(tagsOn(pages)).size]).toEqual([21, 500])
    await addLike(server, ['BH-501'])
    expect(await refusal(server, '')).toMatchObject({ status: 422, code: 'label/too-many' })
  })
})

const anotherSite = { id: '019a0000-0000-7000-8000-000000000001', name: 'Another', timeZone: 'Europe/London' }
const anotherArea = { id: '019a0000-0000-7000-8000-000000000002', code: 'XX', name: 'Another', walkPosition: 1, level: 0 }
