import { recordOf } from './field.ts'
import { aValveWithReading, expect, signInAs, test } from './people.ts'

test('an engineer puts a reading right later, with the reason, and the record keeps both', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-601', { left: 9, right: 9 })
  await signInAs(page, 'engineer', `/valves/${tag}`)
  await page.getByRole('button', { name: 'Put it right' }).click()
  await page.getByLabel('Gap left in mm').fill('8.2')
  await page.getByRole('button', { name: 'Save the correction' }).click()
  await expect(page.getByText(/Is needed: both entries are kept/)).toBeVisible()
  await page.getByLabel('Reason').fill('read from the wrong side')
  await page.getByRole('button', { name: 'Save the correction' }).click()
  await expect(page.getByText('Reason: read from the wrong side.')).toBeVisible({ timeout: 15_000 })
  const { state, timeline } = await recordOf(api, tag)
  expect(state).toMatchObject({ gapLeft: 8.2, gapRight: 9 })
  expect(timeline.map(({ standsAs }) => standsAs)).toEqual(['correction', 'corrected'])
})
