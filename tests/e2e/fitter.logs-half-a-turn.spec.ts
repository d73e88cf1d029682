import { aValveWithReading, expect, signInAs, signInByHand, test } from './people.ts'

test.use({ serviceWorkers: 'block' })

test('a fitter logs half a turn on an M12 gland in two taps, and the board shows 0.875 mm less', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-401', { left: 7.4, right: 6.6 })
  await signInByHand(page, 'fitter', `/?find=${tag}`)
  const reserveOnBoard = async () =>
    Number(await page.getByRole('listitem').filter({ hasText: tag }).locator('data').first().getAttribute('value'))
  await expect(page.getByRole('link', { name: tag })).toBeVisible()
  const before = await reserveOnBoard()

  await page.getByRole('link', { name: tag }).tap()
  await page.getByRole('link', { name: 'Log an entry' }).tap()
  await page.getByRole('button', { name: /^Half turn, dry/ }).tap()
  await expect(page.getByText(/Saved: half a turn.*0\.875.mm less/)).toBeVisible()

  await page
    .getByRole('link', { name: 'Glandkeeper' })
    .or(page.getByRole('link', { name: 'To the valve' }))
    .first()
    .tap()
  await page.goto(`/?find=${tag}`)
  await expect(page.getByRole('link', { name: tag })).toBeVisible()
  expect(before - (await reserveOnBoard())).toBeCloseTo(0.875, 9)
})

test('a fitter takes an entry back at once, and the record keeps both', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-402', { left: 9, right: 9 })
  await signInAs(page, 'fitter', `/valves/${tag}/log`)
  await page.getByRole('button', { name: /^Half turn, dry/ }).tap()
  await page.getByRole('button', { name: /^Take back/ }).tap()
  await expect(page.getByText('Taken back:')).toBeVisible()
  await page.getByRole('link', { name: 'To the valve' }).tap()
  await expect(page.getByText(/taken back/i).first()).toBeVisible()
  await expect(page.getByText('Reason: taken back at once.')).toBeVisible()
})

test('taking back is offered for ten seconds, and then no more', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-406', { left: 9, right: 9 })
  await page.clock.install()
  await signInAs(page, 'fitter', `/valves/${tag}/log`)
  await page.getByRole('button', { name: /^Half turn, dry/ }).tap()
  await expect(page.getByRole('button', { name: /^Take back/ })).toBeVisible()
  await page.clock.runFor(11_000)
  await expect(page.getByRole('button', { name: /^Take back/ })).toHaveCount(0)
  await expect(page.getByText(/^Saved: half a turn/)).toBeVisible()
})

test('a gland without travel offers no half turn, and says so', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-403', { left: 3, right: 3.2 })
  await signInAs(page, 'fitter', `/valves/${tag}/log`)
  await expect(page.getByText('No travel left: report for repack.')).toBeVisible()
  await expect(page.getByRole('button', { name: /^Half turn/ })).toHaveCount(0)
})

test('an unusual gap is asked about again before it is sent', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-404', { left: 9, right: 9 })
  await signInAs(page, 'fitter', `/valves/${tag}/log`)
  await page.getByText('none', { exact: true }).tap()
  await page.getByRole('textbox', { name: 'Gap left, mm' }).fill('55')
  await page.getByRole('textbox', { name: 'Gap right, mm' }).fill('9')
  await page.locator('button.main').tap()
  await expect(page.getByText(/Gap left 55 mm is outside the usual 0 to 40/)).toBeVisible()
})
