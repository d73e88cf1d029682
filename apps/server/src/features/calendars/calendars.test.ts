import { listCalendarAddresses, makeCalendarAddress, retireCalendarAddress } from '@glandkeeper/contract/calendars'
import { retireCrew } from '@glandkeeper/contract/crews'
import { closeRound, makeRound } from '@glandkeeper/contract/rounds'
import { confirmSetting } from '@glandkeeper/contract/settings'
import { addValve } from '@glandkeeper/contract/valves'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import Fastify from 'fastify'
import { expect, it, onTestFinished } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { eventsIn, headIn } from '../../../testing/read-calendar.ts'
import { newId } from '../../platform/ids.ts'
import type { Store } from '../../platform/store.ts'
import { calendarRoutes } from './index.ts'

interface RoundToMake {
  readonly name: string
  readonly walkOn?: string
  readonly crewId?: string | null
  readonly minutes?: number | null
  readonly fitterId?: string | null
}

/** A site with a crew, one valve, and rounds made as they are asked for. */
async function aSiteWithRounds(options: Parameters<typeof aServer>[0] = {}) {
  const server = await aServer(options)
  const { store, siteId, expectOk, app } = server
  const aCrew = async (name: string) => {
    const id = newId()
    await store.write((write) =>
      write.crew.create({ data: { id, siteId, name, hoursPerWeek: 37.5, skills: '[]', createdAt: server.now } }),
    )
    return id
  }
  await expectOk('planner', addValve, { body: aValve({ tag: 'BH-1', areaCode: 'BH' }) })
  const aRound = async ({ name, walkOn = '2026-05-05', crewId = null, minutes = null, fitterId = null }: RoundToMake) => {
    const body = { name, walkOn, fitterId, areaCodes: ['BH'], dueBy: null }
    const { roundId } = await expectOk('planner', makeRound, { body })
    await store.write((write) => write.round.update({ where: { id: roundId }, data: { crewId, minutes } }))
    return roundId
  }
  const anAddress = async (crewId: string | null = null) => expectOk('planner', makeCalendarAddress, { body: { crewId } })
  const read = async (path: string) => app.inject({ method: 'GET', url: path })
  const events = async (path: string) => eventsIn((await read(path)).body)
  return { ...server, aCrew, aRound, anAddress, read, events }
}

it('a calendar program gets each round with its stops, area, minutes and fitter, without a sign-in', async () => {
  const { aRound, anAddress, read, personIds } = await aSiteWithRounds()
  const roundId = await aRound({ name: 'Tuesday', minutes: 74.6, fitterId: personIds.fitter })
  const answer = await read((await anAddress()).path)
  expect([answer.statusCode, answer.headers['content-type'], answer.headers['cache-control']]).toEqual([
    200,
    'text/calendar; charset=utf-8',
    'private, no-cache',
  ])
  expect(headIn(answer.body)).toMatchObject({ VERSION: '2.0', NAME: 'Rounds, Test mill' })
  expect(eventsIn(answer.body)).toEqual([
    {
      UID: `${roundId}@glandkeeper`,
      SEQUENCE: '0',
      SUMMARY: 'Tuesday, 1 stop',
      DTSTART: '20260505T060000Z',
      DTEND: '20260505T071500Z',
      DTSTAMP: '20260504T090000Z',
      'LAST-MODIFIED': '20260504T090000Z',
      DESCRIPTION: 'Area: Boiler house\nExpected: 75 min\nFitter: The fitter',
    },
  ])
})

it('a round begins at 07:00 by the clocks of the site on both sides of their change, and takes an hour where nobody knows', async () => {
  const { aRound, anAddress, events } = await aSiteWithRounds()
  await aRound({ name: 'Summer time', walkOn: '2026-10-23' })
  await aRound({ name: 'Winter time', walkOn: '2026-10-26' })
  const found = await events((await anAddress()).path)
  expect(found.map(({ DTSTART, DTEND }) => [DTSTART, DTEND])).toEqual([
    ['20261023T060000Z', '20261023T070000Z'],
    ['20261026T070000Z', '20261026T080000Z'],
  ])
})

it('a round begins when the site sets out, by its setting', async () => {
  const { aRound, anAddress, events, expectOk } = await aSiteWithRounds()
  await aRound({ name: 'Early', walkOn: '2026-10-23' })
  await expectOk('planner', confirmSetting, { params: { key: 'hourOfSettingOut' }, body: { seen: 7, value: 5.5 } })
  expect((await events((await anAddress()).path)).map(({ DTSTART }) => DTSTART)).toEqual(['20261023T043000Z'])
})

it('a crew has only its rounds, the site all of them', async () => {
  const { aCrew, aRound, anAddress, events } = await aSiteWithRounds()
  const [north, south] = [await aCrew('North'), await aCrew('South')]
  await aRound({ name: 'Of the north', crewId: north })
  await aRound({ name: 'Of the south', crewId: south })
  await aRound({ name: 'Of nobody' })
  const names = async (crewId: string | null) =>
    (await events((await anAddress(crewId)).path)).map(({ SUMMARY }) => SUMMARY!.replace(', 1 stop', ''))
  expect(await names(north)).toEqual(['Of the north'])
  expect(await names(south)).toEqual(['Of the south'])
  expect((await names(null)).toSorted()).toEqual(['Of nobody', 'Of the north', 'Of the south'])
})

it('a closed round stays for eight weeks, with the moment it was closed', async () => {
  let now = new Date('2026-05-04T09:00:00Z')
  const { aRound, anAddress, events, expectOk } = await aSiteWithRounds({ clock: () => now })
  const roundId = await aRound({ name: 'Tuesday' })
  const { path } = await anAddress()
  now = new Date('2026-05-04T15:30:00Z')
  await expectOk('planner', closeRound, { params: { roundId } })
  now = new Date('2026-06-29T15:30:00Z')
  expect(await events(path)).toMatchObject([{ 'LAST-MODIFIED': '20260504T153000Z', DTSTAMP: '20260504T153000Z' }])
  now = new Date('2026-06-29T15:30:01Z')
  expect(await events(path)).toEqual([])
})

it('a wrong address and a retired one are answered alike, and say nothing', async () => {
  const { anAddress, read, call, expectOk } = await aSiteWithRounds()
  const { path, addressId } = await anAddress()
  expect((await read(path)).statusCode).toBe(200)
  await expectOk('engineer', retireCalendarAddress, { params: { addressId } })
  const said = async (url: string) => {
    const answer = await read(url)
    const { instance: _, ...problem } = answer.json<Record<string, unknown>>()
    return [answer.statusCode, problem]
  }
  const nothing = [
    404,
    { type: '/problems/calendar/unknown', title: 'No such calendar address', status: 404, code: 'calendar/unknown' },
  ]
  expect(await said(path)).toEqual(nothing)
  expect(await said(`/calendar/${'A'.repeat(43)}.ics`)).toEqual(nothing)
  expect(await said('/calendar/.ics')).toEqual(nothing)
  expect(await said(path.replace(/\w\.ics/, '.ics'))).toEqual(nothing)
  expect(await call('planner', retireCalendarAddress, { params: { addressId } })).toMatchObject({
    problem: { code: 'calendar/unknown' },
  })
})

it('the address is in the answer that made it and nowhere else: not in lists, not in the register, not in the log', async () => {
  const { aCrew, anAddress, expectOk, store } = await aSiteWithRounds()
  const crewId = await aCrew('North')
  const { path, ...made } = await anAddress(crewId)
  expect(path).toMatch(/^\/calendar\/[\w-]{43}\.ics$/)
  expect(made).toMatchObject({ crewId, crewName: 'North', madeBy: 'The planner', madeAt: '2026-05-04T09:00:00.000Z' })
  expect((await anAddress(crewId)).path).not.toBe(path)
  const { addresses } = await expectOk('engineer', listCalendarAddresses)
  expect(addresses).toHaveLength(2)
  expect(addresses).toContainEqual(made)
  const token = path.slice('/calendar/'.length, -'.ics'.length)
  const rows = await store.read.calendarAddress.findMany()
  expect(JSON.stringify([addresses, rows])).not.toContain(token)
  const logged = await linesLoggedOf(path, store)
  expect(logged).toContain('/calendar/:token.ics')
  expect(logged).not.toContain(token)
})

/** What the server logs of one request at its usual level. */
async function linesLoggedOf(url: string, store: Store): Promise<string> {
  const lines: string[] = []
  const app = Fastify({ logger: { level: 'info', stream: { write: (line: string) => void lines.push(line) } } })
  onTestFinished(() => app.close())
  app.decorateRequest('signedIn', null)
  calendarRoutes(app, { store, clock: () => new Date('2026-05-04T09:00:00Z') })
  expect((await app.inject(url)).statusCode).toBe(200)
  return lines.join('')
}

it('names with commas, semicolons, backslashes, umlauts and line breaks come through whole, on lines of at most 75 octets', async () => {
  const { aCrew, aRound, anAddress, read, store, personIds } = await aSiteWithRounds()
  const name = 'Kesselhaus, Süd; Trübwasser\\Rücklauf 弁 '.repeat(2).trim()
  const crewId = await aCrew('Nörd, früh;\r\nEND:VCALENDAR')
  await store.write((write) =>
    write.person.update({ where: { id: personIds.fitter }, data: { name: 'R. Öakes, jr;\nBEGIN:VEVENT' } }),
  )
  await store.write((write) => write.area.updateMany({ data: { name: 'Pumpen, Keller;\rBühne' } }))
  await aRound({ name, crewId, fitterId: personIds.fitter })
  const { body } = await read((await anAddress(crewId)).path)
  expect(headIn(body)['NAME']).toBe('Rounds, Nörd, früh;\nEND:VCALENDAR')
  expect(eventsIn(body)).toMatchObject([
    {
      SUMMARY: `${name}, 1 stop`,
      DESCRIPTION: 'Area: Pumpen, Keller;\nBühne\nFitter: R. Öakes, jr;\nBEGIN:VEVENT',
    },
  ])
  expect(Math.max(...body.split('\r\n').map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75)
  expect(body.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
})

it('nothing of a person is in it but the name', async () => {
  const { aRound, anAddress, read, personIds, siteId } = await aSiteWithRounds()
  await aRound({ name: 'Tuesday', fitterId: personIds.fitter })
  const { body } = await read((await anAddress()).path)
  expect(body).toContain('The fitter')
  for (const other of [...Object.values(personIds), siteId, 'The planner', 'The engineer', 'ATTENDEE', 'ORGANIZER', 'mailto'])
    expect(body).not.toContain(other)
})

it('an address of a crew that is not there, of another site or retired is not made', async () => {
  const { aCrew, call, store, siteId } = await aSiteWithRounds()
  const crewId = await aCrew('North')
  await store.write((write) =>
    write.crew.update({ where: { id: crewId }, data: { retiredAt: new Date('2026-05-01T00:00:00Z') } }),
  )
  for (const id of [crewId, siteId])
    expect(await call('planner', makeCalendarAddress, { body: { crewId: id } })).toMatchObject({
      problem: { code: 'crew/unknown' },
    })
  expect(await store.read.calendarAddress.count()).toBe(0)
})

it('the address of a crew opens nothing once the crew is retired, and who made and retired addresses is on record', async () => {
  const { aCrew, anAddress, read, expectOk, store } = await aSiteWithRounds()
  const [ofCrew, ofSite] = [await anAddress(await aCrew('Night crew')), await anAddress()]
  expect((await read(ofCrew.path)).statusCode).toBe(200)
  await expectOk('planner', retireCrew, { params: { crewId: ofCrew.crewId ?? '' } })
  expect((await read(ofCrew.path)).statusCode).toBe(404)
  expect((await read(ofSite.path)).statusCode).toBe(200)
  await expectOk('engineer', retireCalendarAddress, { params: { addressId: ofSite.addressId } })
  const changes = await store.read.registerChange.findMany({ where: { subject: 'calendar' }, orderBy: { id: 'asc' } })
  expect(changes.map(({ what, after }) => [what, JSON.parse(after)])).toEqual([
    ['calendar address made', { shows: 'Night crew' }],
    ['calendar address made', { shows: 'the whole site' }],
    ['calendar address retired', { shows: 'the whole site' }],
  ])
})
