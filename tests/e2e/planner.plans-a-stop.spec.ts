import { expect, signInByHand, test } from './people.ts'

test('a planner sets the next stop, and the board counts up to it', async ({ page }) => {
  const stop = new Date(Date.now() + 120 * 86_400_000)
  const iso = stop.toISOString().slice(0, 10)
  const inWords = stop.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' })
  await signInByHand(page, 'planner', '/register/site')
  await page.getByRole('button', { name: 'Change the site' }).click()
  await page.getByRole('textbox', { name: 'Next planned stop' }).fill(iso)
  await page.getByRole('button', { name: 'Save the site' }).click()
  await expect(page.getByText(inWords)).toBeVisible()
  await page.goto('/')
  await expect(page.getByText(inWords).first()).toBeVisible()

  await page.goto('/register/site')
  await page.getByRole('button', { name: 'Change the site' }).click()
  await page.getByRole('textbox', { name: 'Next planned stop' }).fill('next summer')
  await page.getByRole('button', { name: 'Save the site' }).click()
  await expect(page.getByText(/date/i).first()).toBeVisible()
  await page.getByRole('textbox', { name: 'Next planned stop' }).fill('')
  await page.getByRole('button', { name: 'Save the site' }).click()
  await expect(page.getByText('none planned: the board counts from today')).toBeVisible()
})
