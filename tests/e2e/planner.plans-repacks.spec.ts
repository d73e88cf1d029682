import { addArea } from '@glandkeeper/contract/areas'
import { showCutCard } from '@glandkeeper/contract/cut-cards'
import { sendEvents } from '@glandkeeper/contract/events'
import { listOutages } from '@glandkeeper/contract/outages'
import { addStockItem, listStock, moveStock } from '@glandkeeper/contract/stores'
import { addValve } from '@glandkeeper/contract/valves'
import { aReading, aRepack } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { type APIRequestContext, type Page } from '@playwright/test'
import { randomUUID } from 'node:crypto'
import { recordOf } from './field.ts'
import { expect, signInAs, test } from './people.ts'

const REEL = { lotId: randomUUID(), label: 'Reel E2E-1', batch: 'B-4471', amount: 9.5 }
const dayIn = (days: number) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10)
const monthsAgo = (months: number) => new Date(Date.now() - months * 30.4 * 86_400_000).toISOString()
const press = (page: Page, name: RegExp) => page.getByRole('button', { name }).click()

/** An area of the test's own: two valves that are isolated together, and one by itself, all of them in an outage only. */
async function aHallToRepack(planner: APIRequestContext) {
  const post = async (path: string, data: unknown) => {
    const answer = await planner.post(path, { data })
    expect(answer.status(), await answer.text()).toBeLessThan(300)
    return answer.json() as Promise<unknown>
  }
  await post(addArea.path, { code: 'ZR', name: 'Repack test hall', walkPosition: 991, level: 0 })
  for (const [tag, isolationBoundary] of [
    ['ZR-1', 'ZR pump'],
    ['ZR-2', 'ZR pump'],
    ['ZR-3', ''],
  ] as const) {
    const valve = aValve({
      tag,
      areaCode: 'ZR',
      isolationBoundary,
      isolatesOnLine: false,
      access: 'floor',
      criticality: 'high',
      // A space of 8 mm, which is a cord that is sold.
      gland: { boxBore: 44 },
    })
    const { valveId } = addValve.ok.parse(await post(addValve.path, valve))
    const gaps = [13, 11.4, 10, 8.8, 7.8]
    const events = [
      aRepack({ valveId, takenAt: monthsAgo(12), gapLeft: 16, gapRight: 16 }),
      ...gaps.map((gap, index) => aReading({ valveId, takenAt: monthsAgo(10 - index * 2 - 0.1), gapLeft: gap, gapRight: gap })),
    ]
    await post(sendEvents.path, { events })
  }
  const card = showCutCard.ok.parse(await (await planner.get('/api/valves/ZR-1/cut-card')).json())
  const item = addStockItem.ok.parse(
    await post(addStockItem.path, {
      kind: 'cord',
      name: 'Cord of the test',
      family: card.family,
      section: card.cord?.size,
      boxBore: null,
      stemDiameter: null,
      thread: null,
      length: null,
      leadTimeDays: 30,
      leastStock: 2,
      packSize: 8,
    }),
  )
  const received = {
    kind: 'received',
    movementId: randomUUID(),
    itemId: item.itemId,
    takenAt: new Date().toISOString(),
    note: '',
  }
  await post(moveStock.path, { movements: [{ ...received, ...REEL, expiresOn: null, orderId: null }] })
  return { itemId: item.itemId, rings: card.rings?.count ?? 0 }
}

test('a planner sets an outage, plans, asks what if it slips, moves two valves and prints; a fitter repacks; an engineer finds it', async ({
  page,
  api,
}) => {
  test.setTimeout(180_000)
  const planner = await api('planner')
  const { itemId, rings } = await aHallToRepack(planner)

  // An outage of the hall, in three weeks, and one more a little later.
  await signInAs(page, 'planner', '/repacks/outages')
  for (const [name, days] of [
    ['Hall stop', 21],
    ['Second hall stop', 42],
  ] as const) {
    await page.getByRole('button', { name: 'Add an outage' }).click()
    const form = page.getByRole('form', { name: 'Add an outage' })
    await form.getByLabel('Name').fill(name)
    await form.getByLabel('First day, likely').fill(dayIn(days))
    await form.getByLabel('Days', { exact: true }).fill('5')
    await form.getByLabel('Hours of fitting').fill('20')
    await form.getByLabel('Hours of scaffolding').fill('0')
    await form.getByLabel('Hours of isolating').fill('8')
    await form.getByLabel('ZR Repack test hall').check()
    await form.getByRole('button', { name: 'Add the outage' }).click()
    await expect(page.getByRole('heading', { name, exact: true })).toBeVisible()
  }
  const { outages } = listOutages.ok.parse(await (await planner.get(listOutages.path)).json())
  const [first, second] = ['Hall stop', 'Second hall stop'].map(
    (name) => outages.find((one) => one.name === name)?.outageId ?? '',
  )

  // The plan has the hall's valves in one of them; it is taken.
  await page.goto('/repacks')
  await page.getByRole('button', { name: 'Make a plan' }).click()
  await page.getByRole('textbox', { name: 'Name' }).fill('Plan of the test')
  await page.getByRole('button', { name: 'Make the plan' }).click()
  await expect(page.getByRole('heading', { name: /^Plan of the test/ })).toBeVisible({ timeout: 60_000 })
  await page.getByRole('button', { name: 'Take this plan' }).click()
  await expect(page.getByRole('heading', { name: /^Plan of the test in use/ })).toBeVisible()
  await page.goto(`/repacks?slot=outage:${first}`)
  for (const tag of ['ZR-1', 'ZR-2', 'ZR-3']) await expect(page.getByRole('rowheader', { name: new RegExp(tag) })).toBeVisible()

  // If it slips six weeks: who runs out.
  await page.getByRole('link', { name: 'Ask what if' }).click()
  await page.getByLabel('Hall stop', { exact: true }).fill('6')
  await page.getByLabel('Name of the answer').fill('Six weeks later')
  await page.getByRole('button', { name: 'Work out the answer' }).click()
  await expect(page.getByRole('heading', { name: /^Six weeks later/ })).toBeVisible({ timeout: 60_000 })
  await expect(page.getByRole('heading', { name: 'Who runs out, if the plan is kept' })).toBeVisible()
  const showAll = page.getByRole('button', { name: /^Show \d+ of them$/ })
  if (await showAll.isVisible()) await showAll.click()
  const kept = page.getByRole('table').filter({ hasText: 'If the plan is kept' })
  await expect(kept.getByRole('rowheader', { name: /ZR-1/ })).toBeVisible()

  // The pair goes to the second stop, whole.
  await page.goto(`/repacks?slot=outage:${first}`)
  await page.getByRole('button', { name: 'Move or pin ZR-1' }).click()
  await page.getByRole('button', { name: /Slot of ZR-1/ }).click()
  await page.getByRole('option', { name: /Second hall stop/ }).click()
  await page.getByRole('button', { name: 'Move it there' }).click()
  await expect(page.getByText(/^Moved and pinned: ZR-1, ZR-2, to/)).toBeVisible()
  await page.goto(`/repacks?slot=outage:${second}`)
  for (const tag of ['ZR-1', 'ZR-2']) await expect(page.getByRole('rowheader', { name: new RegExp(tag) })).toBeVisible()

  // Its papers: a pack of the boundary, as a PDF.
  await page.goto('/repacks/outages')
  const row = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'Second hall stop', exact: true }) })
  const address = await row.getByRole('link', { name: 'Job packs to print (PDF)' }).getAttribute('href')
  const pack = await planner.get(address ?? '')
  expect(pack.headers()['content-type']).toContain('application/pdf')
  expect((await pack.body()).subarray(0, 5).toString()).toBe('%PDF-')
  await row.getByRole('link', { name: /^Kit/ }).click()
  await expect(page.getByText(/Reel E2E-1/).first()).toBeVisible()

  // The fitter repacks one; the gap comes out short and one more ring goes in, from the same reel.
  const onHand = async () => {
    const { items } = listStock.ok.parse(await (await planner.get(listStock.path)).json())
    return items.find((item) => item.itemId === itemId)?.onHand ?? Number.NaN
  }
  expect(await onHand()).toBeCloseTo(REEL.amount, 6)
  await signInAs(page, 'fitter', '/valves/ZR-1/proof')
  await press(page, /^Old rings that came out/)
  await page.getByRole('group', { name: 'Ring 1, under the follower, is' }).getByRole('button', { name: 'hard' }).click()
  await press(page, /other \d+ too: hard/)
  for (let ring = 1; ring <= rings; ring++) await press(page, new RegExp(`^Ring ${ring} is in`))
  const load = async () => {
    await press(page, /^Next: load it/)
    const torques = await page.getByRole('checkbox').count()
    for (let step = 0; step < torques; step++) await press(page, /N·m done/)
    await press(page, /^Next: try the wheel/)
    await page.getByText('no overrun', { exact: true }).click()
    await press(page, /^Next: read the gaps/)
  }
  const readGaps = async (gap: string) => {
    for (const side of ['left', 'right']) await page.getByRole('textbox', { name: `Gap ${side}, mm` }).fill(gap)
  }
  await load()
  await readGaps('3.4')
  await press(page, /^One more ring/)
  await press(page, new RegExp(`^Ring ${rings + 1} is in`))
  await load()
  await readGaps('9.6')
  await press(page, /^Next: look it over/)
  await press(page, /^Batch and reel/)
  await page.getByLabel('From').selectOption(REEL.lotId)
  await press(page, /^Save it/)
  await expect(page.getByText(new RegExp(`^Saved: repacked, ${rings + 1} rings`))).toBeVisible()
  const { timeline } = await recordOf(api, 'ZR-1')
  expect(timeline[0]?.event).toMatchObject({ kind: 'packing.renewed', rings: rings + 1, batch: REEL.batch })
  const entry = timeline[0]?.event as { readonly fromStore?: readonly { readonly amount: number }[] } | undefined
  const taken = entry?.fromStore?.[0]
  expect(taken?.amount).toBeGreaterThan(0.5)
  expect(await onHand()).toBeCloseTo(REEL.amount - (taken?.amount ?? 0), 6)

  // The engineer finds the record where the valve is.
  await signInAs(page, 'engineer', '/valves/ZR-1')
  await expect(page.getByText(/batch B-4471/).first()).toBeVisible()
  await expect(page.getByText(/hard/).first()).toBeVisible()
  await page.goto(`/stores/items/${itemId}`)
  await expect(page.getByText(/ZR-1/).first()).toBeVisible()
})
