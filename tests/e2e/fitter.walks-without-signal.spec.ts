import path from 'node:path'
import { aRound, onDevice, readyForTheField, recordOf } from './field.ts'
import { expect, signInAs, test } from './people.ts'

test.use({ offlineOnPurpose: true })

test('a fitter walks twelve stops without signal, reloads, closes and reopens, and all of it arrives once', async ({
  page,
  context,
  api,
}) => {
  test.setTimeout(120_000)
  const round = await aRound(api, 'ZW', 12)
  const tags = round.stops.map(({ tag }) => tag)
  await signInAs(page, 'fitter', '/rounds')
  await readyForTheField(page)
  await context.setOffline(true)

  await page.getByRole('link', { name: /Round ZW/ }).tap()
  await page.getByRole('link', { name: new RegExp(`^1 ${tags[0]}`) }).tap()
  const stop = page
  const halfTurn = async () => {
    await stop.getByRole('button', { name: /^Half turn, dry/ }).tap()
    await expect(stop.getByText(/Saved on this device: half a turn/)).toBeVisible()
  }
  const next = async (n: number) => {
    await stop.getByRole('link', { name: `Next: ${tags[n]}` }).tap()
    await expect(stop.getByRole('heading', { name: tags[n]! })).toBeVisible()
  }
  await halfTurn()
  await next(1)
  // A look, damp.
  await page.getByText('none', { exact: true }).tap()
  await page.getByRole('group', { name: 'Leak' }).getByText('damp').tap()
  await page.locator('button.main').tap()
  await expect(page.getByText(/Saved on this device: looked at, damp/)).toBeVisible()
  await next(2)
  // Gaps of both sides.
  await page.getByText('none', { exact: true }).tap()
  await page.getByRole('textbox', { name: 'Gap left, mm' }).fill('8.6')
  await page.getByRole('textbox', { name: 'Gap right, mm' }).fill('8.4')
  await page.locator('button.main').tap()
  await expect(page.getByText(/Saved on this device: gap 8\.6 left, 8\.4 right/)).toBeVisible()
  await next(3)
  // Could not do it, and why.
  await page.getByLabel('Entry').selectOption('could not do it')
  await page.getByLabel('Why').selectOption('too hot')
  await page.locator('button.main').tap()
  await expect(page.getByText(/Saved on this device: could not do it/)).toBeVisible()
  await next(4)
  // With a photo.
  await page
    .getByLabel('Photo', { exact: true })
    .setInputFiles(path.join(import.meta.dirname, '../../apps/web/public/mark-512.png'))
  await expect(page.getByText('1 photo')).toBeVisible()
  await halfTurn()
  expect(await onDevice(page)).toHaveLength(5)

  await page.reload()
  await expect(page.getByText(/5 on this device/)).toBeVisible()
  await page.goto(`/rounds/${round.roundId}`)
  await expect(page.getByText('5 of 12 stops done')).toBeVisible()
  await page.getByRole('link', { name: new RegExp(`^6 ${tags[5]}`) }).tap()
  await halfTurn()
  await next(6)
  await halfTurn()
  // Taken back at once: the stop is open again, and both entries stay.
  await page.getByRole('button', { name: /^Take back/ }).tap()
  await expect(page.getByText('Taken back:')).toBeVisible()

  const again = await context.newPage()
  await page.close()
  await again.goto(`/rounds/${round.roundId}`)
  await expect(again.getByText('6 of 12 stops done')).toBeVisible()
  for (const n of [6, 7, 8, 9, 10, 11]) {
    await again.goto(`/rounds/${round.roundId}`)
    await again.getByRole('link', { name: new RegExp(`^${n + 1} ${tags[n]}`) }).tap()
    await again.getByRole('button', { name: /^Half turn, dry/ }).tap()
    await expect(again.getByText(/Saved on this device: half a turn/)).toBeVisible()
  }
  await expect(again.getByText('Round walked')).toBeVisible()
  expect(await onDevice(again)).toHaveLength(14)

  await context.setOffline(false)
  await expect.poll(() => onDevice(again), { timeout: 30_000 }).toEqual([])
  await expect(again.getByRole('status').filter({ hasText: /^last sync/ })).toBeVisible()

  for (const [n, tag] of tags.entries()) {
    const { timeline, state } = await recordOf(api, tag)
    const kinds = timeline.map(({ event }) => event.kind).slice(0, -1)
    // The newest first; the reading that the test began with is left out.
    const expected = n === 1 ? ['leak.seen'] : n === 2 ? ['reading.taken'] : n === 3 ? ['visit.missed'] : ['gland.nipped']
    expect(kinds, tag).toEqual(n === 6 ? ['gland.nipped', 'fact.corrected', 'gland.nipped'] : expected)
    expect(state.gapLeft).toBeCloseTo(n === 2 ? 8.6 : n === 1 || n === 3 ? 9 : 8.125, 9)
  }
  const [nip] = (await recordOf(api, tags[4]!)).timeline
  const digests = nip?.event['photos'] as string[]
  expect(digests).toHaveLength(1)
  const photo = await (await api('engineer')).get(`/api/photos/${digests[0]}`)
  expect(photo.headers()['content-type']).toBe('image/jpeg')

  // Its thumbnail goes along too: seen once with signal, it is there without.
  const stopWithPhoto = `/valves/${tags[4]}/log?round=${round.roundId}`
  const thumbnail = again.getByRole('img', { name: 'Photo with this entry' })
  const isSeen = () => thumbnail.evaluate((image) => image instanceof HTMLImageElement && image.naturalWidth > 0)
  await again.goto(stopWithPhoto)
  await expect.poll(isSeen).toBe(true)
  await context.setOffline(true)
  await again.goto(stopWithPhoto)
  await expect.poll(isSeen).toBe(true)
})

test('half a turn is three taps from the list of rounds at most', async ({ page, api }) => {
  const round = await aRound(api, 'ZT', 2)
  await signInAs(page, 'fitter', '/rounds')
  let taps = 0
  const tap = async (role: 'link' | 'button', name: RegExp) => {
    taps += 1
    await page.getByRole(role, { name }).tap()
  }
  await tap('link', /Round ZT/)
  await tap('link', new RegExp(`^1 ${round.stops[0]?.tag}`))
  await tap('button', /^Half turn, dry/)
  await expect(page.getByText(/^Saved/)).toBeVisible()
  expect(taps).toBeLessThanOrEqual(3)
})
