import { readFile } from 'node:fs/promises'
import { expect, signInAs, test } from './people.ts'

const headings = 'tag,area,service,phase,description,box bore [mm],stem diameter [in],stud thread'
const good = (n: number) => `ZZ-10${n},BM,saturated steam,steam,Test line ${n},45,1.1,M12`
const file = [
  headings,
  good(1),
  'ZZ-201,BM,saturated steam,steam,Bore too small,20,1.1,M12',
  good(2),
  'ZZ-202,BM,saturated steam,vapour of some kind,Phase unknown,45,1.1,M12',
  'ZZ-203,BM,saturated steam,steam,"=HYPERLINK(""x"")",45,1.1,M12',
  good(3),
].join('\n')

test('a planner brings in a list with three bad rows, sees them named, and imports the rest', async ({ page }) => {
  await signInAs(page, 'planner', '/imports')
  await page.getByLabel('valve list').check()
  await page.getByLabel(/^File/).setInputFiles({ name: 'new line.csv', mimeType: 'text/csv', buffer: Buffer.from(file) })
  await page.getByRole('button', { name: 'Send and check the file' }).click()

  await expect(page.getByText('6 rows read: 3 good, 3 with faults. Nothing is written yet.')).toBeVisible()
  const faults = page.getByRole('table', { name: /fault/i })
  await expect(
    faults.getByRole('row', { name: /3 box bore \[mm\].*a bore of 20 mm is not larger than a stem of 27.94 mm/ }),
  ).toBeVisible()
  await expect(faults.getByRole('row', { name: /5 phase.*not one of: steam, gas, liquid, slurry/ })).toBeVisible()
  await expect(faults.getByRole('row', { name: /6 description.*a formula is not read/ })).toBeVisible()

  await page.getByRole('button', { name: 'Import the 3 good rows' }).click()
  await expect(page.getByText('3 rows imported; 3 with faults left out.')).toBeVisible()

  const download = page.waitForEvent('download')
  await page.getByRole('link', { name: 'Download the 3 bad rows with reasons' }).click()
  const bad = await readFile(await (await download).path(), 'utf8')
  expect(bad.trim().split('\n')).toHaveLength(4)
  expect(bad).toContain('a bore of 20 mm is not larger than a stem of 27.94 mm')

  await page.getByRole('link', { name: 'Look at the board' }).click()
  await page.getByLabel(/Find/).fill('test line')
  await expect(page.getByRole('row', { name: /ZZ-10\d/ })).toHaveCount(3)
})

test.describe('by hand', () => {
  test.use({ refusals: [422] })

  test('a planner adds a valve, is told what cannot be, and mends it', async ({ page }) => {
    await signInAs(page, 'planner', '/register/new-valve')
    await page.getByLabel('Tag').fill('ZZ-301')
    await page.getByLabel('What it seals').fill('Wash water to press')
    await choose(page, 'Area', 'Board machine')
    await page.getByLabel('Service').fill('hot water')
    await choose(page, 'Phase', 'liquid')
    await choose(page, 'Kind of valve', 'globe')
    await page.getByLabel('Stem diameter').fill('28')
    await page.getByLabel('Box bore').fill('20')
    await page.getByLabel('Stud thread').fill('M13')
    await page.getByRole('button', { name: 'Add the valve' }).click()
    await expect(page.getByText('a bore of 20 mm is not larger than a stem of 28 mm').first()).toBeVisible()
    await expect(page.getByText(/M13 is not a thread we know/).first()).toBeVisible()

    await page.getByLabel('Box bore').fill('45')
    await page.getByLabel('Stud thread').fill('M12')
    await page.getByRole('button', { name: 'Add the valve' }).click()
    await expect(page.getByRole('heading', { name: 'ZZ-301' })).toBeVisible()
  })
})

async function choose(page: import('@playwright/test').Page, label: string, option: string): Promise<void> {
  await page.getByRole('button', { name: new RegExp(label) }).click()
  await page.getByRole('option', { name: new RegExp(option) }).click()
}
