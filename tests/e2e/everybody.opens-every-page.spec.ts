import { accessFaults, expect, signInAs, test } from './people.ts'

test.use({ serviceWorkers: 'block' })

const pages = [
  '/',
  '/valves/BM-3307',
  '/valves/BM-3307/log',
  '/valves/BM-3304/cut-card',
  '/valves/BM-3307/proof',
  '/packings',
  '/packings/PTFE%20braid',
  '/register/settings',
  '/bench',
  '/bench/gland-torque',
  '/bench/ring-set?valve=BM-3307',
  '/rounds',
  '/rounds/plan',
  '/rounds/due',
  '/repacks',
  '/repacks/outages',
  '/repacks/what-if',
  '/stores',
  '/stores/kit?tag=BM-3307',
  '/register/crews',
  '/leaks',
  '/leaks/repeat',
  '/leaks/losses',
  '/leaks/rules',
  '/leaks/evidence?tag=BM-3307',
  '/valves/BM-3307/leaks',
  '/packings/lives',
  '/log',
  '/find',
  '/waiting',
  '/register',
  '/register/new-valve',
  '/register/site',
  '/imports',
  '/problems/valve/unknown',
  '/nowhere',
]

/** Few enough for one test on a slow machine. */
const PAGES_OF_A_TEST = 9
const portions = Array.from({ length: Math.ceil(pages.length / PAGES_OF_A_TEST) }, (_, index) =>
  pages.slice(index * PAGES_OF_A_TEST, (index + 1) * PAGES_OF_A_TEST),
)

for (const [index, portion] of portions.entries()) {
  test(`every page is there for everybody, portion ${index + 1}`, async ({ page }, { project }) => {
    test.setTimeout(120_000)
    // Each page once at each width and once in each theme: colours are the same tokens at both widths.
    await page.emulateMedia({ colorScheme: project.name === 'desk' ? 'dark' : 'light' })
    await signInAs(page, 'planner')
    for (const address of portion) {
      await page.goto(address)
      await expect(
        page.getByRole('heading', { level: 1 }).or(page.getByRole('table')).or(page.getByRole('list')).first(),
      ).toBeVisible()
      expect(await accessFaults(page), address).toEqual([])
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
      expect([address, overflow <= 0]).toEqual([address, true])
    }
  })
}

test('the board scrolls to its end with every valve on it', async ({ page }) => {
  await signInAs(page, 'fitter')
  await expect(
    page
      .getByText('418 valves')
      .or(page.getByText(/^4\d\d valves/))
      .first(),
  ).toBeVisible()
  await page.mouse.wheel(0, 100_000)
  await page.evaluate(() => window.scrollTo(0, document.documentElement.scrollHeight))
  await expect(async () => {
    await page.evaluate(() => window.scrollTo(0, document.documentElement.scrollHeight))
    expect(await page.getByText('…', { exact: true }).count()).toBe(0)
    expect(await page.getByRole('link', { name: /^[A-Z]{2}-\d+/ }).count()).toBeGreaterThan(5)
  }).toPass()
})
