import { makeCalendarAddress, retireCalendarAddress } from '@glandkeeper/contract/calendars'
import { exportLog, showLog } from '@glandkeeper/contract/log'
import { addPerson, changePerson } from '@glandkeeper/contract/people'
import { addStop, changeRound, closeRound, makeRound } from '@glandkeeper/contract/rounds'
import { changeSite } from '@glandkeeper/contract/sites'
import { changeValve, retireValve } from '@glandkeeper/contract/valves'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { parse } from 'csv-parse/sync'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { add } from '../../../testing/valves-alike.ts'

const site = { name: 'Test mill', timeZone: 'Europe/London', nextStopOn: null }

/** Four changes, a day of the site after the other from the first of May, the second by the engineer. */
async function aLog() {
  let now = new Date('2026-05-01T22:30:00.000Z')
  const nextDay = () => (now = new Date(now.getTime() + 86_400_000))
  const server = await aServer({ clock: () => now })
  const { valveId } = await add(server, { tag: 'BH-1', description: 'Feed pump' })
  nextDay()
  const valve = aValve({ areaCode: 'BH', tag: 'BH-1', description: 'Feed pump 100% "A"' })
  await server.expectOk('engineer', changeValve, { params: { tag: 'BH-1' }, body: { revision: 1, valve } })
  nextDay()
  await server.expectOk('planner', changeSite, { body: { ...site, nextStopOn: '2027-06-09' } })
  nextDay()
  await add(server, { tag: 'BH-2', description: 'Drain' })
  const find = async (query: object) => (await server.expectOk('fitter', showLog, { query })).rows
  return { server, valveId, find }
}

it('tells who changed what, the newest first, by the name a person uses', async () => {
  const { server } = await aLog()
  const { total, rows, people } = await server.expectOk('fitter', showLog, { query: {} })
  expect(total).toBe(4)
  expect(rows.map(({ by, subject, name, what }) => [by, subject, name, what])).toEqual([
    ['The planner', 'valve', 'BH-2', 'valve added'],
    ['The planner', 'site', 'Test mill', 'site changed'],
    ['The engineer', 'valve', 'BH-1', 'valve changed'],
    ['The planner', 'valve', 'BH-1', 'valve added'],
  ])
  expect(rows[1]!.changes).toEqual([{ field: 'nextStopOn', before: '', after: '2027-06-09' }])
  expect(rows[2]!.changes).toEqual([{ field: 'description', before: 'Feed pump', after: 'Feed pump 100% "A"' }])
  expect(people.map(({ name }) => name)).toEqual(['The engineer', 'The fitter', 'The planner'])
})

it('is read page by page, without losing or doubling a line', async () => {
  const { server, find } = await aLog()
  const whole = await find({})
  const pages = [await find({ offset: '0', limit: '3' }), await find({ offset: '3', limit: '3' })]
  expect(pages.map((page) => page.length)).toEqual([3, 1])
  expect(pages.flat()).toEqual(whole)
  expect((await server.expectOk('fitter', showLog, { query: { limit: '1' } })).total).toBe(4)
})

it('is narrowed to a subject, a person, days of the site, and words in any spelling of capitals', async () => {
  const { server, find } = await aLog()
  const whatsOf = async (query: object) => (await find(query)).map(({ name, what }) => `${name} ${what}`)
  const [second, site3, changed, first] = ['BH-2 valve added', 'Test mill site changed', 'BH-1 valve changed', 'BH-1 valve added']
  expect(await whatsOf({ subject: 'valve' })).toEqual([second, changed, first])
  expect(await whatsOf({ person: server.personIds.engineer })).toEqual([changed])
  // 22:30 UTC is 23:30 in London.
  expect(await whatsOf({ from: '2026-05-02', to: '2026-05-03' })).toEqual([site3, changed])
  expect(await whatsOf({ to: '2026-05-01' })).toEqual([first])
  expect(await whatsOf({ find: 'PUMP feed' })).toEqual([changed, first])
  expect(await whatsOf({ find: '100% "a"' })).toEqual([changed])
  expect(await whatsOf({ find: 'drain pump' })).toEqual([])
  expect(await whatsOf({ find: 'nextStopOn' })).toEqual([site3])
})

it('finds a valve by its tag, though the change itself does not say it', async () => {
  const { server, find } = await aLog()
  await server.expectOk('engineer', retireValve, { params: { tag: 'BH-2' }, body: { revision: 1, reason: 'line removed' } })
  expect((await find({ find: 'bh-2' })).map(({ what }) => what).toSorted()).toEqual(['valve added', 'valve retired'])
})

it('a spreadsheet has a row for each field that changed', async () => {
  const { server } = await aLog()
  const csv = await server.expectOk('fitter', exportLog, { query: { from: '2026-05-02', to: '2026-05-03' } })
  const rows = parse(csv, { bom: true, columns: true }) as Record<string, string>[]
  expect(rows.map(({ who, about, name, field, before, after }) => [who, about, name, field, before, after])).toEqual([
    ['The planner', 'site', 'Test mill', 'nextStopOn', '', '2027-06-09'],
    ['The engineer', 'valve', 'BH-1', 'description', 'Feed pump', 'Feed pump 100% "A"'],
  ])
})

it('a long log comes whole into the file', async () => {
  const { server } = await aLog()
  const { store, siteId, personIds } = server
  const at = new Date('2026-05-06T08:00:00Z')
  const rows = Array.from({ length: 1_203 }, (_, index) => ({
    id: `00000000-0000-7000-8000-${String(index).padStart(12, '0')}`,
    siteId,
    at,
    personId: personIds.planner,
    subject: 'site',
    subjectId: siteId,
    what: `change ${index}`,
    before: '{}',
    after: '{}',
  }))
  await store.write((write) => write.insertRows('register_change', rows))
  const csv = await server.expectOk('fitter', exportLog, { query: { from: '2026-05-06' } })
  const whats = (parse(csv, { bom: true, columns: true }) as Record<string, string>[]).map(({ what }) => what)
  expect(whats).toEqual(rows.map(({ what }) => what).toReversed())
})

it('no password, token or hash of one stands in it', async () => {
  const { server } = await aLog()
  const person = { name: 'P. Reed', signInName: 'reed', role: 'fitter', password: 'red lead and oil' } as const
  const { personId } = await server.expectOk('planner', addPerson, { body: person })
  const hashNow = async () => (await server.store.read.person.findUnique({ where: { id: personId } }))!.passwordHash
  const firstHash = await hashNow()
  const change = { name: 'P. Reed', role: 'planner', hasLeft: false, password: 'tallow and hemp' } as const
  await server.expectOk('planner', changePerson, { params: { personId }, body: change })
  const { path, addressId } = await server.expectOk('planner', makeCalendarAddress, { body: { crewId: null } })
  await server.expectOk('planner', retireCalendarAddress, { params: { addressId } })
  const csv = await server.expectOk('fitter', exportLog, { query: {} })
  expect(csv).toContain('new password')
  expect(csv).toContain('calendar address made')
  const { tokenHash } = (await server.store.read.calendarAddress.findUnique({ where: { id: addressId } }))!
  const token = path.split('/').at(-1)!.replace('.ics', '')
  for (const secret of [person.password, change.password, firstHash, await hashNow(), tokenHash, token])
    expect(csv).not.toContain(secret)
})

it('a round made, changed, lengthened and closed is noted with the name of its fitter', async () => {
  const { server, find } = await aLog()
  const body = { name: 'Tuesday', walkOn: '2026-05-05', fitterId: server.personIds.fitter, areaCodes: ['BH'], dueBy: null }
  const { roundId } = await server.expectOk('planner', makeRound, { body })
  await server.expectOk('planner', changeRound, { params: { roundId }, body: { walkOn: '2026-05-06', fitterId: null } })
  await add(server, { tag: 'BH-3' })
  await server.expectOk('planner', addStop, { params: { roundId }, body: { tag: 'BH-3' } })
  await server.expectOk('planner', closeRound, { params: { roundId } })
  const rows = await find({ subject: 'round' })
  const told = rows.map(({ name, what, changes }) => [name, what, ...changes.map(({ before, after }) => `${before}>${after}`)])
  expect(new Set(told.map((row) => row.join(' ')))).toEqual(
    new Set([
      'Tuesday round made >The fitter >Tuesday >2 >2026-05-05',
      'Tuesday round changed The fitter> 2026-05-05>2026-05-06',
      'Tuesday stop added >BH-3',
      'Tuesday round closed >yes >3',
    ]),
  )
})
