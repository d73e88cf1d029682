import { AxeBuilder } from '@axe-core/playwright'
import { expect, signInAs, test } from './people.ts'

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
  '/find',
  '/waiting',
  '/register',
  '/register/new-valve',
  '/register/site',
  '/imports',
  '/problems/valve/unknown',
  '/nowhere',
]

const HALVES = [pages.slice(0, pages.length >> 1), pages.slice(pages.length >> 1)] as const

for (const [half, theme] of [
  [0, 'paper'],
  [1, 'paper'],
  [0, 'the night shift'],
  [1, 'the night shift'],
] as const) {
  test(`every page is there for everybody, half ${half + 1}, on ${theme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme === 'paper' ? 'light' : 'dark' })
    await signInAs(page, 'planner')
    for (const address of HALVES[half]) {
      await page.goto(address)
      await expect(
        page.getByRole('heading', { level: 1 }).or(page.getByRole('table')).or(page.getByRole('list')).first(),
      ).toBeVisible()
      const { violations } = await new AxeBuilder({ page }).analyze()
      expect([address, violations.map((violation) => `${violation.id}: ${violation.nodes[0]?.target.join(' ')}`)]).toEqual([
        address,
        [],
      ])
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
