import { sendEvents } from '@glandkeeper/contract/events'
import { whoAmI } from '@glandkeeper/contract/people'
import { aLeak, aNip, aReading } from '@glandkeeper/fixtures/a-reading'
import type { Page } from '@playwright/test'
import { onDevice, putOnDevice, recordOf, wake } from './field.ts'
import { OwnServer } from './own-server.ts'
import { aValveWithReading, expect, signInAs, signInByHand, test } from './people.ts'

test.use({ offlineOnPurpose: true, refusals: [401, 500, 502] })

const at = (minute: number) => new Date(Date.UTC(2026, 4, 2, 8, minute)).toISOString()

async function personIdOf(page: Page): Promise<string> {
  const { person } = whoAmI.ok.parse(await (await page.request.get(whoAmI.path)).json())
  return person!.personId
}

const kindsOf = async (...[api, tag]: Parameters<typeof recordOf>) =>
  (await recordOf(api, tag)).timeline.map(({ event }) => event.kind).slice(0, -1)

test('a reply lost after the server had written: sent again, and there once', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-521', { left: 9, right: 9 })
  await signInAs(page, 'fitter', `/valves/${tag}/log`)
  let lost = 0
  await page.route(`**${sendEvents.path}`, async (route) => {
    if (lost > 0) return route.continue()
    lost += 1
    await route.fetch()
    return route.abort('connectionreset')
  })
  await page.getByRole('button', { name: /^Half turn, dry/ }).tap()
  await expect(page.getByText(/^Saved: half a turn/)).toBeVisible({ timeout: 15_000 })
  expect(lost).toBe(1)
  expect(await onDevice(page)).toEqual([])
  expect(await kindsOf(api, tag)).toEqual(['gland.nipped'])
  expect((await recordOf(api, tag)).state.gapLeft).toBeCloseTo(8.125, 9)
})

test('a page of somebody else in the way, as of a network that wants a sign-in: the entry stays and is tried again by itself', async ({
  page,
  api,
}) => {
  const { tag } = await aValveWithReading(api, 'ZZ-511', { left: 9, right: 9 })
  await signInAs(page, 'fitter', `/valves/${tag}/log`)
  let inTheWay = 0
  await page.route(`**${sendEvents.path}`, (route) => {
    if (inTheWay > 1) return route.continue()
    inTheWay += 1
    return route.fulfill({ status: 200, contentType: 'text/html', body: '<h1>Welcome to the network</h1>' })
  })
  await page.getByRole('button', { name: /^Half turn, dry/ }).tap()
  await expect(page.getByText(/^Saved on this device: half a turn/)).toBeVisible()
  await expect(page.getByText(/^Saved: half a turn/)).toBeVisible({ timeout: 20_000 })
  expect(inTheWay).toBe(2)
  expect(await kindsOf(api, tag)).toEqual(['gland.nipped'])
})

test('a server killed in the middle of a batch: after its next start every entry is there once', async ({ page, browser }) => {
  test.setTimeout(180_000)
  const server = new OwnServer(4189, process.env['GLANDKEEPER_E2E_FOLDER'])
  try {
    await server.start()
    const context = await browser.newContext({ baseURL: server.address })
    const phone = await context.newPage()
    await phone.goto(`${server.address}/rounds`)
    await phone.getByLabel('Sign-in name').fill('fitter')
    await phone.getByLabel('Password').fill('tarn-hollow')
    await phone.getByRole('button', { name: 'Sign in' }).click()
    await expect(phone.getByRole('status').filter({ hasText: /^last sync/ })).toBeVisible({ timeout: 60_000 })
    const board = await (await context.request.get('/api/board?limit=1')).json()
    const [{ tag, valveId }] = board.rows
    const events = Array.from({ length: 90 }, (_, count) => aLeak({ valveId, takenAt: at(count % 60), count }))
    await putOnDevice(phone, events, await personIdOf(phone))
    const sending = phone.waitForRequest(`**${sendEvents.path}`)
    await phone.reload()
    await sending
    await new Promise((resolve) => setTimeout(resolve, 150))
    await server.kill()
    await new Promise((resolve) => setTimeout(resolve, 500))
    // None was confirmed: the device keeps them all, though the server has written some.
    expect(await onDevice(phone)).toHaveLength(90)
    await server.start()
    await wake(phone)
    await expect.poll(() => onDevice(phone), { timeout: 60_000 }).toEqual([])
    const { timeline } = await (await context.request.get(`/api/valves/${tag}`)).json()
    const ids = timeline.map(({ event }: { event: { id: string } }) => event.id)
    for (const { id } of events) expect(ids.filter((known: string) => known === id)).toHaveLength(1)
    await context.close()
  } finally {
    await server.end()
    await page.close()
  }
})

test('one poison entry among twenty: nineteen go through, it stays, and goes when the fault is mended', async ({ page, api }) => {
  const { tag, valveId } = await aValveWithReading(api, 'ZZ-503', { left: 9, right: 9 })
  await signInAs(page, 'fitter', '/waiting')
  const events = Array.from({ length: 20 }, (_, count) => aLeak({ valveId, takenAt: at(count), count }))
  const poison = events[12]!.id
  await page.route(`**${sendEvents.path}`, (route) =>
    route.request().postData()?.includes(poison)
      ? route.fulfill({
          status: 500,
          contentType: 'application/problem+json',
          body: JSON.stringify({ type: '/problems/server/fault', code: 'server/fault', title: 'Unexpected fault', status: 500 }),
        })
      : route.continue(),
  )
  await putOnDevice(page, events, await personIdOf(page))
  await wake(page)
  await expect.poll(() => onDevice(page), { timeout: 30_000 }).toEqual([{ id: poison, state: 'waiting', code: 'server/fault' }])
  expect(await kindsOf(api, tag)).toHaveLength(19)
  await expect(page.getByText(/Last try: Unexpected fault/)).toBeVisible()
  await page.unroute(`**${sendEvents.path}`)
  await wake(page)
  await expect.poll(() => onDevice(page)).toEqual([])
  expect(await kindsOf(api, tag)).toHaveLength(20)
})

test('a session that runs out on the way: saving goes on, and a sign-in sends it', async ({ page, context, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-504', { left: 9, right: 9 })
  await signInAs(page, 'fitter', `/valves/${tag}/log`)
  await expect(page.getByRole('button', { name: /^Half turn, dry/ })).toBeVisible()
  await context.clearCookies()
  await page.getByRole('button', { name: /^Half turn, dry/ }).tap()
  await expect(page.getByText(/^Saved on this device: half a turn/)).toBeVisible()
  await expect(page.getByText(/sign in to send/)).toBeVisible()
  await page.goto(`/valves/${tag}/log`)
  await expect(page.getByText('Your session has run out.')).toBeVisible()
  await page.getByRole('button', { name: /^Half turn, dry/ }).tap()
  await expect(page.getByText(/^Saved on this device: half a turn/)).toBeVisible()
  expect(await onDevice(page)).toHaveLength(2)
  await page.getByRole('link', { name: 'Sign in to send them' }).tap()
  await page.getByLabel('Sign-in name').fill('fitter')
  await page.getByLabel('Password').fill('tarn-hollow')
  await page.getByRole('button', { name: 'Sign in' }).tap()
  await expect.poll(() => onDevice(page), { timeout: 15_000 }).toEqual([])
  expect(await kindsOf(api, tag)).toEqual(['gland.nipped', 'gland.nipped'])
})

test('two tabs that make entries without signal: each entry arrives once', async ({ page, context, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-505', { left: 9, right: 9 })
  await signInAs(page, 'fitter', `/valves/${tag}/log`)
  const second = await context.newPage()
  await second.goto(`/valves/${tag}/log`)
  await expect(second.getByRole('button', { name: /^Half turn, dry/ })).toBeVisible()
  const sent: string[] = []
  for (const tab of [page, second])
    tab.on('request', (request) => request.url().endsWith(sendEvents.path) && sent.push(request.postData() ?? ''))
  await context.setOffline(true)
  for (const tab of [page, second]) {
    await tab.getByRole('button', { name: /^Half turn, dry/ }).tap()
    await expect(tab.getByText(/^Saved on this device: half a turn/)).toBeVisible()
  }
  const made = await onDevice(page)
  expect(made).toHaveLength(2)
  sent.length = 0
  await context.setOffline(false)
  await Promise.all([wake(page), wake(second)])
  await expect.poll(() => onDevice(page), { timeout: 15_000 }).toEqual([])
  expect(await kindsOf(api, tag)).toEqual(['gland.nipped', 'gland.nipped'])
  // One tab sends at a time, so none was sent twice.
  for (const { id } of made) expect(sent.filter((body) => body.includes(id))).toHaveLength(1)
})

test('two phones whose entries arrive out of order: the state follows when they were made', async ({ page, browser, api }) => {
  const { tag, valveId } = await aValveWithReading(api, 'ZZ-506', { left: 9, right: 9 })
  await signInAs(page, 'fitter', '/waiting')
  const other = await (await browser.newContext()).newPage()
  await signInAs(other, 'engineer', '/waiting')
  // The other phone read the gap after this one had nipped it, and is heard of first.
  await putOnDevice(other, [aReading({ valveId, takenAt: at(30), gapLeft: 8, gapRight: 8 })], await personIdOf(other))
  await wake(other)
  await expect.poll(() => onDevice(other), { timeout: 15_000 }).toEqual([])
  await putOnDevice(
    page,
    [aNip({ valveId, takenAt: at(10) }), aNip({ valveId, takenAt: at(50), count: 2 })],
    await personIdOf(page),
  )
  await wake(page)
  await expect.poll(() => onDevice(page), { timeout: 15_000 }).toEqual([])
  const { state, timeline } = await recordOf(api, tag)
  expect(timeline.map(({ event }) => event.kind).slice(0, -1)).toEqual(['gland.nipped', 'reading.taken', 'gland.nipped'])
  expect(state.gapLeft).toBeCloseTo(8 - 0.875, 9)
  await other.context().close()
})

test('an entry of another version than the server knows waits for a newer server; an old one without newer fields is taken', async ({
  page,
  api,
}) => {
  const { tag, valveId } = await aValveWithReading(api, 'ZZ-507', { left: 9, right: 9 })
  await signInAs(page, 'fitter', '/waiting')
  const old = aLeak({ valveId, takenAt: at(1) })
  const newer = { ...aLeak({ valveId, takenAt: at(2), count: 2 }), version: 2 } as never
  const unheardOf = { ...aLeak({ valveId, takenAt: at(3), count: 3 }), kind: 'leak.heard' } as never
  await putOnDevice(page, [old, newer, unheardOf], await personIdOf(page))
  await wake(page)
  await expect
    .poll(async () => (await onDevice(page)).map(({ state, code }) => [state, code]), { timeout: 15_000 })
    .toEqual([
      ['waiting', 'event/unknown-kind'],
      ['waiting', 'event/unknown-kind'],
    ])
  expect(await kindsOf(api, tag)).toEqual(['leak.seen'])
})

test('a device whose clock is three hours ahead is told so, and its entry is kept with both times', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-508', { left: 9, right: 9 })
  await page.clock.install({ time: new Date(Date.now() + 3 * 3_600_000) })
  await signInAs(page, 'fitter', `/valves/${tag}/log`)
  await expect(page.getByText(/the clock of this device is 3 h ahead/)).toBeVisible()
  await page.getByRole('button', { name: /^Half turn, dry/ }).tap()
  await expect.poll(() => onDevice(page), { timeout: 15_000 }).toEqual([])
  const [entry] = (await recordOf(api, tag)).timeline
  const ahead = Date.parse(entry!.event.takenAt) - Date.parse(entry!.receivedAt)
  expect(Math.round(ahead / 3_600_000)).toBe(3)
  expect(entry!.findings.map(({ code }) => code)).toContain('event/clock-ahead')
})

test('a refused entry is kept with its reason, is put right by hand, and signing out waits for it', async ({ page, api }) => {
  const { tag, valveId } = await aValveWithReading(api, 'ZZ-509', { left: 9, right: 9 })
  await signInAs(page, 'fitter', '/waiting')
  const wrong = { ...aReading({ valveId, takenAt: at(1), gapLeft: 8, gapRight: 8 }), gapLeft: 850 } as never
  await putOnDevice(page, [wrong], await personIdOf(page))
  await wake(page)
  await expect(page.getByText('Gap: at most 200 mm').first()).toBeVisible({ timeout: 15_000 })
  await expect(page.getByRole('button', { name: 'Sign out', exact: true })).toHaveCount(0)
  await expect(page.getByRole('link', { name: 'Sign out after 1 unsent' })).toBeVisible()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Download what is unsent' }).tap(),
  ])
  expect(download.suggestedFilename()).toBe('unsent-entries.json')
  await page.getByRole('button', { name: 'Put it right' }).tap()
  await page.getByLabel('Gap left in mm').fill('8.5')
  await page.getByRole('button', { name: 'Save and send again' }).tap()
  await expect(page.getByText('Nothing waits')).toBeVisible({ timeout: 15_000 })
  expect((await recordOf(api, tag)).state.gapLeft).toBe(8.5)
  await expect(page.getByRole('button', { name: 'Sign out' })).toBeVisible()
})

test('an entry of somebody else on the device keeps nobody signed in, and is sent when they sign in', async ({ page, api }) => {
  const { tag, valveId } = await aValveWithReading(api, 'ZZ-510', { left: 9, right: 9 })
  const other = whoAmI.ok.parse(await (await (await api('engineer')).get(whoAmI.path)).json()).person!.personId
  await signInByHand(page, 'fitter', '/waiting')
  await putOnDevice(page, [aLeak({ valveId, takenAt: at(1) })], other)
  await page.reload()
  await expect(page.getByText('Made by somebody else: sent when they sign in')).toBeVisible()
  await page.getByRole('button', { name: 'Sign out', exact: true }).tap()
  await page.getByLabel('Sign-in name').fill('engineer')
  await page.getByLabel('Password').fill('tarn-hollow')
  await page.getByRole('button', { name: 'Sign in' }).tap()
  await expect.poll(() => onDevice(page), { timeout: 15_000 }).toEqual([])
  expect(await kindsOf(api, tag)).toEqual(['leak.seen'])
})
