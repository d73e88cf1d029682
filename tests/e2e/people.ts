import { addValve } from '@glandkeeper/contract/valves'
import { sendEvents } from '@glandkeeper/contract/events'
import type { Role } from '@glandkeeper/contract/roles'
import { aReading } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { expect, type Page, test as base } from '@playwright/test'

const PASSWORD = 'tarn-hollow'
const demoNames: Readonly<Record<Role, string>> = { planner: 'Edda Marlow', fitter: 'R. Oakes', engineer: 'Priya Lindqvist' }

/** Every test also fails when the page writes an error or a warning to the console, or an uncaught fault. */
export const test = base.extend<{ quietConsole: void }>({
  quietConsole: [
    async ({ page }, use) => {
      const said: string[] = []
      page.on('console', (message) => ['error', 'warning'].includes(message.type()) && said.push(message.text()))
      page.on('pageerror', (error) => said.push(String(error)))
      await use()
      expect(said).toEqual([])
    },
    { auto: true },
  ],
})

export { expect }

/** Signs in on the page, as a person does. */
export async function signInAs(page: Page, role: Role, to = '/'): Promise<void> {
  await page.goto(to)
  await page.getByLabel('Sign-in name').fill(role)
  await page.getByLabel('Password').fill(PASSWORD)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page.getByRole('button', { name: 'Sign out' })).toBeVisible()
}

export function nameOf(role: Role): string {
  return demoNames[role]
}

/** A valve of the test's own, with one reading, through the API: what the test is not about. */
export async function aValveWithReading(page: Page, tag: string, gaps: { left: number; right: number }): Promise<{ tag: string; valveId: string }> {
  const api = page.request
  await api.post('/api/session', { data: { signInName: 'planner', password: PASSWORD } })
  const added = await api.post(addValve.path, { data: aValve({ areaCode: 'BM', tag, description: 'Test header drain' }) })
  expect(added.status()).toBe(201)
  const { valveId } = addValve.ok.parse(await added.json())
  const taken = await api.post(sendEvents.path, { data: { events: [aReading({ valveId, takenAt: '2026-05-01T08:00:00Z', gapLeft: gaps.left, gapRight: gaps.right })] } })
  expect(taken.status()).toBe(200)
  await api.delete('/api/session')
  return { tag, valveId }
}
