import { AxeBuilder } from '@axe-core/playwright'
import { addValve } from '@glandkeeper/contract/valves'
import { sendEvents } from '@glandkeeper/contract/events'
import { signIn } from '@glandkeeper/contract/people'
import type { Role } from '@glandkeeper/contract/roles'
import { aReading } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { type APIRequestContext, type Cookie, expect, type Page, test as base } from '@playwright/test'

const PASSWORD = 'tarn-hollow'
const demoNames: Readonly<Record<Role, string>> = { planner: 'Edda Marlow', fitter: 'R. Oakes', engineer: 'Priya Lindqvist' }

interface Fixtures {
  /** Statuses a test provokes on purpose: the browser writes each refused request to the console. */
  refusals: readonly number[]
  /** The test takes the signal away: what the browser says about that is no fault. */
  offlineOnPurpose: boolean
  quietConsole: void
}

interface WorkerFixtures {
  /** Signed in as a role through the API, once for all tests. */
  api: (role: Role) => Promise<APIRequestContext>
}

/** Every test also fails when the page writes an error or a warning to the console, or an uncaught fault. */
export const test = base.extend<Fixtures, WorkerFixtures>({
  refusals: [[], { option: true }],
  offlineOnPurpose: [false, { option: true }],
  api: [
    async ({ playwright }, use, worker) => {
      const contexts = new Map<Role, Promise<APIRequestContext>>()
      const open = async (role: Role) => {
        const context = await playwright.request.newContext({ baseURL: worker.project.use.baseURL! })
        expect((await context.post(signIn.path, { data: { signInName: role, password: PASSWORD } })).status()).toBe(201)
        return context
      }
      await use((role) => {
        const context = contexts.get(role) ?? open(role)
        contexts.set(role, context)
        return context
      })
      for (const context of contexts.values()) await (await context).dispose()
    },
    { scope: 'worker' },
  ],
  quietConsole: [
    async ({ page, refusals, offlineOnPurpose }, use) => {
      const said: string[] = []
      page.on('console', (message) => ['error', 'warning'].includes(message.type()) && said.push(message.text()))
      page.on('pageerror', (error) => said.push(String(error)))
      await use()
      const provoked = (text: string) =>
        text === 'Service Worker registration blocked by Playwright' ||
        (offlineOnPurpose && /Failed to load resource: net::ERR_|Failed to fetch/.test(text)) ||
        refusals.some((status) => text.includes(`Failed to load resource: the server responded with a status of ${status}`))
      expect(said.filter((text) => !provoked(text))).toEqual([])
    },
    { auto: true },
  ],
})

export { expect }

/** Signs in on the page, as a person does. */
export async function signInByHand(page: Page, role: Role, to = '/'): Promise<void> {
  await page.goto(to)
  await page.getByLabel('Sign-in name').fill(role)
  await page.getByLabel('Password').fill(PASSWORD)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page.getByRole('button', { name: 'Sign out' })).toBeVisible()
}

const sessions = new Map<Role, Cookie[]>()

/**
 * Opens the page with a session that goes on from test to test: the server takes ten sign-ins of a name in a minute.
 * A test that signs out begins with `signInByHand`.
 */
export async function signInAs(page: Page, role: Role, to = '/'): Promise<void> {
  const context = page.context()
  const session = sessions.get(role)
  if (session) await context.addCookies(session)
  else {
    expect((await context.request.post(signIn.path, { data: { signInName: role, password: PASSWORD } })).status()).toBe(201)
    sessions.set(role, await context.cookies())
  }
  await page.goto(to)
  await expect(page.getByRole('button', { name: 'Sign out' })).toBeVisible()
}

/** What axe finds wrong on the page as it stands. Our pages have no frames: its single run says the same in half the time. */
export async function accessFaults(page: Page) {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
    .analyze()
  return violations.map(({ id, impact, nodes }) => ({ id, impact, where: nodes[0]?.target.join(' ') }))
}

export function nameOf(role: Role): string {
  return demoNames[role]
}

/** A valve of the test's own, with one reading, through the API: what the test is not about. */
export async function aValveWithReading(
  api: WorkerFixtures['api'],
  tag: string,
  gaps: { left: number; right: number },
): Promise<{ tag: string; valveId: string }> {
  const planner = await api('planner')
  const added = await planner.post(addValve.path, { data: aValve({ areaCode: 'BM', tag, description: 'Test header drain' }) })
  expect(added.status()).toBe(201)
  const { valveId } = addValve.ok.parse(await added.json())
  const taken = await planner.post(sendEvents.path, {
    data: { events: [aReading({ valveId, takenAt: '2026-05-01T08:00:00Z', gapLeft: gaps.left, gapRight: gaps.right })] },
  })
  expect(taken.status()).toBe(200)
  return { tag, valveId }
}
