import { gzipSync } from 'node:zlib'
import { aRound, readyForTheField } from './field.ts'
import { accessFaults, aValveWithReading, expect, signInAs, test } from './people.ts'

test.use({ offlineOnPurpose: true })

/** Room for a thumb in a glove, in px; links within a sentence are read, not hit. */
const LEAST_TARGET = 48

test('every screen of a round is free of serious faults, and its targets are large enough', async ({ page, api }) => {
  test.setTimeout(120_000)
  const round = await aRound(api, 'ZA', 3)
  const tag = round.stops[0]!.tag
  await signInAs(page, 'fitter', '/rounds')
  const screens = ['/rounds', `/rounds/${round.roundId}`, `/valves/${tag}/log?round=${round.roundId}`, '/find', '/waiting']
  for (const screen of screens) {
    await page.goto(screen)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
    await expect(page.getByRole('status').filter({ hasText: /last sync/ })).toBeVisible()
    const faults = await accessFaults(page)
    expect(
      faults.filter(({ impact }) => impact === 'serious' || impact === 'critical'),
      screen,
    ).toEqual([])
    const small = await page
      .locator('main button:visible, main a[class]:visible, main select:visible')
      .evaluateAll(
        (targets, least) =>
          targets
            .map((target) => ({ words: target.textContent, height: target.getBoundingClientRect().height }))
            .filter(({ height }) => height < least),
        LEAST_TARGET,
      )
    expect(small, screen).toEqual([])
  }
})

test('a half turn, its taking back and the next stop are done by keys alone', async ({ page, api }) => {
  const round = await aRound(api, 'ZK', 2)
  await signInAs(page, 'fitter', `/valves/${round.stops[0]?.tag}/log?round=${round.roundId}`)
  const press = async (name: RegExp) => {
    const button = page.getByRole('button', { name }).or(page.getByRole('link', { name }))
    await expect(button).toBeVisible()
    for (let tabs = 0; tabs < 80; tabs++) {
      if (await button.evaluate((element) => element === document.activeElement)) break
      await page.keyboard.press('Tab')
    }
    await expect(button).toBeFocused()
    await page.keyboard.press('Enter')
  }
  await press(/^Half turn, dry/)
  await press(/^Take back/)
  await expect(page.getByText('Taken back:')).toBeVisible()
  await press(/^Next: /)
  await expect(page.getByRole('heading', { name: round.stops[1]!.tag })).toBeVisible()
})

test('the first load of a stop is at most 200 kB of script, and with a slow processor it is usable within 2.5 s', async ({
  page,
  context,
  api,
}) => {
  const { tag } = await aValveWithReading(api, 'ZZ-520', { left: 9, right: 9 })
  await signInAs(page, 'fitter', '/rounds')
  await readyForTheField(page)
  const address = `/valves/${tag}/log`

  // As on the very first visit: no worker, no cache.
  const first = await context.browser()!.newContext({ storageState: await context.storageState(), serviceWorkers: 'block' })
  const fresh = await first.newPage()
  const scripts: Promise<number>[] = []
  fresh.on('response', (response) => {
    if (new URL(response.url()).pathname.endsWith('.js')) scripts.push(response.body().then((body) => gzipSync(body).length))
  })
  await fresh.goto(new URL(address, page.url()).href)
  await expect(fresh.getByRole('button', { name: /^Half turn, dry/ })).toBeVisible()
  const bytes = (await Promise.all(scripts)).reduce((sum, each) => sum + each, 0)
  expect(bytes).toBeGreaterThan(50_000)
  expect(bytes).toBeLessThanOrEqual(200_000)
  await first.close()

  const slow = await context.newCDPSession(page)
  await slow.send('Emulation.setCPUThrottlingRate', { rate: 4 })
  const began = Date.now()
  await page.goto(address)
  await expect(page.getByRole('button', { name: /^Half turn, dry/ })).toBeEnabled()
  expect(Date.now() - began).toBeLessThan(2500)
})

test('the page can be put on the home screen, and says what the browser has promised to keep', async ({ page }) => {
  await signInAs(page, 'fitter', '/waiting')
  await expect(page.getByText(/^The browser has (not )?promised to keep what is on this device/)).toBeVisible()
  await expect(page.getByText(/\d+ MB are free for this page/)).toBeVisible()
  const address = await page.locator('link[rel=manifest]').getAttribute('href')
  const manifest = await (await page.request.get(address!)).json()
  expect(manifest).toMatchObject({ name: 'Glandkeeper', display: 'standalone', start_url: '/rounds' })
  const sizes = await Promise.all(
    manifest.icons.map(async ({ src }: { src: string }) => {
      const png = await (await page.request.get(src)).body()
      return `${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`
    }),
  )
  expect(sizes).toEqual(manifest.icons.map((icon: { sizes: string }) => icon.sizes))
})
