import { accessFaults, expect, signInAs, test } from './people.ts'

test('a planner prints labels of an area, and the code of one opens its valve', async ({ page, api }) => {
  await signInAs(page, 'planner', '/register')
  await page.getByRole('link', { name: 'Print labels' }).click()
  await expect(page.getByRole('alert')).toContainText('No phone gets to this address')

  await page.getByRole('button', { name: /Size of a label/ }).click()
  await page.getByRole('option', { name: '48 x 25 mm, 44 on a sheet' }).click()
  await page.getByRole('button', { name: /Valves of/ }).click()
  await page.getByRole('option', { name: /^BM / }).click()
  await expect(page.getByText(/valves in walking order, \d+ sheets? of A4/)).toBeVisible()
  expect(await accessFaults(page)).toEqual([])

  const sheets = page.getByRole('link', { name: 'Open the sheets as PDF' })
  await expect(sheets).toHaveAttribute('target', '_blank')
  const answer = await (await api('planner')).get((await sheets.getAttribute('href'))!)
  expect([answer.status(), answer.headers()['content-type']]).toEqual([200, 'application/pdf'])
  expect((await answer.body()).subarray(0, 5).toString()).toBe('%PDF-')

  await page.goto('/v/BM-3307')
  await expect(page).toHaveURL('/valves/BM-3307/log')
})
