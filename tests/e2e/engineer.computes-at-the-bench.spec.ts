import { aValveWithReading, expect, signInAs, test } from './people.ts'

test('an engineer cuts a ring in inches, sends the address, and the other sees the same', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write'])
  await signInAs(page, 'engineer', '/bench')
  await page.getByRole('link', { name: 'Ring length' }).click()
  await page.getByRole('textbox', { name: 'Stem diameter, mm' }).fill('1-1/8 in')
  await page.getByRole('textbox', { name: 'Section, mm' }).fill('5/16')
  await expect(page.getByText('= 28.575 mm')).toBeVisible()
  // π · (1.125 + 0.3125) = 4.516 in.
  const answer = page.getByRole('region', { name: 'Answer' })
  await expect(answer.getByText('4.516 in').first()).toBeVisible()
  await expect(answer.getByRole('img', { name: /One ring of 7.9 mm cord/ })).toBeVisible()

  await page.getByRole('button', { name: 'Copy as text' }).click()
  await expect(page.getByText('copied, with the address of this page')).toBeVisible()
  const copied = await page.evaluate(() => navigator.clipboard.readText())
  expect(copied).toContain('Stem diameter: 1-1/8 in')
  await page.goto(copied.split('\n').at(-1)!)
  await expect(page.getByRole('textbox', { name: 'Stem diameter, mm' })).toHaveValue('1-1/8 in')
  await expect(page.getByRole('region', { name: 'Answer' }).getByText('4.516 in').first()).toBeVisible()

  await page.getByText('Formula, limits and sources').click()
  await expect(page.getByText('length at mid-width = π · (stem + section)')).toBeVisible()
  await expect(page.getByText(/Mobley/).first()).toBeVisible()
})

test('what cannot be is said at its input, and the answer waits', async ({ page }) => {
  await signInAs(page, 'engineer', '/bench/section')
  await page.getByRole('textbox', { name: 'Box bore, mm' }).fill('20')
  await expect(page.getByText(/bore must be larger than the stem/)).toBeVisible()
  await expect(page.getByText(/the answer follows by itself/)).toBeVisible()
  await page.getByRole('textbox', { name: 'Box bore, mm' }).fill('about 45')
  await expect(page.getByText(/write a figure, such as/)).toBeVisible()
})

test('a valve’s own figures are filled in', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-502', { left: 7.4, right: 6.6 })
  await signInAs(page, 'engineer', `/valves/${tag}`)
  await page.getByRole('region', { name: 'What to do and why' }).getByRole('link', { name: 'Bench' }).click()
  await page.getByRole('link', { name: 'Gland load and torque' }).click()
  await expect(page.getByText(`filled in from ${tag}`)).toBeVisible()
  await expect(page.getByRole('textbox', { name: 'Box bore, mm' })).toHaveValue('45')
  await expect(page.getByLabel('Stud thread')).toHaveValue('M12')
  await expect(page.getByText(`from ${tag}`).nth(1)).toBeVisible()
})

test('two boxes filled in faster than the page can draw both keep what was typed', async ({ page }) => {
  await signInAs(page, 'engineer', '/bench/ring-length')
  const stem = page.getByRole('textbox', { name: 'Stem diameter, mm' })
  const section = page.getByRole('textbox', { name: 'Section, mm' })
  await expect(section).toHaveValue('8.5')
  await page.evaluate(() => {
    const put = (label: string, text: string) => {
      const box = [...document.querySelectorAll('input')].find(({ labels }) => labels?.[0]?.textContent === label)!
      Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!.call(box, text)
      box.dispatchEvent(new Event('input', { bubbles: true }))
    }
    put('Stem diameter, mm', '30')
    setTimeout(() => put('Section, mm', '9'))
  })
  await expect(section).toHaveValue('9')
  await expect(stem).toHaveValue('30')
})
