import { aValveWithReading, expect, signInAs, test } from './people.ts'

test.use({ serviceWorkers: 'block' })

test('a fitter opens the cut card of a valve and takes it along as a page', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-405', { left: 9, right: 9 })
  await signInAs(page, 'fitter', `/valves/${tag}`)
  await page.getByRole('link', { name: 'Cut card' }).tap()
  await expect(page.getByRole('heading', { name: tag })).toBeVisible()
  // π · (28 + 8.5) mm for the 45 mm box and the 28 mm stem of the test's valve.
  await expect(page.getByText('114.7').first()).toBeVisible()
  await expect(page.getByText('Backseating is not isolation.')).toBeVisible()
  await expect(page.getByText(/Nuts a quarter turn at a time, alternately and equally/).first()).toBeVisible()

  const address = await page.getByRole('link', { name: 'PDF A5' }).getAttribute('href')
  const printed = await (await api('fitter')).get(address!)
  expect(printed.headers()['content-type']).toContain('application/pdf')
  expect((await printed.body()).subarray(0, 5).toString()).toBe('%PDF-')
})
