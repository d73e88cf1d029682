import { sendEvents } from '@glandkeeper/contract/events'
import { addValve } from '@glandkeeper/contract/valves'
import { aRepack } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import type { Page } from '@playwright/test'
import { recordOf } from './field.ts'
import { aValveWithReading, expect, signInAs, test } from './people.ts'

test.use({ serviceWorkers: 'block' })

const press = (page: Page, name: RegExp) => page.getByRole('button', { name }).tap()
const readGaps = async (page: Page, left: string, right: string) => {
  await page.getByRole('textbox', { name: 'Gap left, mm' }).fill(left)
  await page.getByRole('textbox', { name: 'Gap right, mm' }).fill(right)
}

test('a fitter proves a repack: a short gap asks for one more ring, a reload loses nothing, and the register has it all', async ({
  page,
  api,
}) => {
  const { tag, valveId } = await aValveWithReading(api, 'ZZ-420', { left: 9, right: 9 })
  const before = aRepack({ valveId, takenAt: '2026-05-01T09:00:00Z' })
  expect((await (await api('planner')).post(sendEvents.path, { data: { events: [before] } })).status()).toBe(200)

  await signInAs(page, 'fitter', `/valves/${tag}/cut-card`)
  await page.getByRole('link', { name: 'Prove the repack' }).tap()
  await expect(page.getByText('First isolate, lock, drain, vent and prove zero.')).toBeVisible()
  const rings = await page.getByRole('checkbox').count()
  expect(rings).toBeGreaterThan(3)
  await expect(page.getByText('joint at 12', { exact: true }).first()).toBeVisible()
  for (let ring = 1; ring <= rings; ring++) await press(page, new RegExp(`^Ring ${ring} is in`))
  await page.reload()
  await expect(page.getByRole('checkbox', { name: /^Ring/ })).toHaveCount(rings)
  expect(await page.getByRole('checkbox', { checked: true }).count()).toBe(rings)
  await expect(page.getByText(/kept on this device/)).toBeVisible()

  const load = async () => {
    await press(page, /^Next: load it/)
    const torques = await page.getByRole('checkbox').count()
    for (let step = 0; step < torques; step++) await press(page, /N·m done/)
    await press(page, /^Next: try the wheel/)
    await page.getByText('no overrun', { exact: true }).tap()
    await press(page, /^Next: read the gaps/)
  }
  await load()
  await readGaps(page, '3.4', '3.2')
  await expect(page.getByText(/Put in one more ring, still isolated and proved at zero/)).toBeVisible()
  await press(page, /^One more ring/)
  await press(page, new RegExp(`^Ring ${rings + 1} is in`))
  await load()
  await readGaps(page, '9.6', '9.4')
  await expect(page.getByText(/of travel\. Go on\./)).toBeVisible()
  await press(page, /^Next: look it over/)
  await press(page, /^Save it/)
  await expect(page.getByText(new RegExp(`^Saved: repacked, ${rings + 1} rings, no overrun`))).toBeVisible()
  await expect(page.getByText(/Next look by the register:.*after a repack.*The site procedure decides/)).toBeVisible()

  const { timeline, state } = await recordOf(api, tag)
  expect(timeline[0]?.event).toMatchObject({
    kind: 'packing.renewed',
    family: 'graphite braid',
    rings: rings + 1,
    gapLeft: 9.6,
    proved: true,
    jointsStaggered: true,
    loadedInSteps: true,
  })
  expect(timeline[0]?.says).toContain('joints staggered, loaded in steps')
  expect(state.nextLook?.rule).toBe('after a repack')

  await page.goto(`/valves/${tag}/proof`)
  await expect(page.getByRole('checkbox', { checked: true })).toHaveCount(0)
})

test('on a gland nobody measured the steps go on with the rings that are typed, and what was left out is asked about', async ({
  page,
  api,
}) => {
  const tag = 'ZZ-421'
  const bare = { boxBore: null, stemDiameter: null, boxDepth: null, noseLength: null, studThread: null }
  const added = await (await api('planner')).post(addValve.path, { data: aValve({ areaCode: 'BM', tag, gland: bare }) })
  expect(added.status()).toBe(201)
  await signInAs(page, 'fitter', `/valves/${tag}/proof`)
  await expect(page.getByText('Say how many rings go in')).toBeVisible()
  await page.getByRole('textbox', { name: 'Rings that go in' }).fill('4')
  await press(page, /^Ring 1 is in/)
  await press(page, /^4 Read both gaps|Read both gaps/)
  await readGaps(page, '14', '14')
  await expect(page.getByText(/What the gap should be is not known/)).toBeVisible()
  await press(page, /^Next: look it over/)
  await press(page, /^Save it/)
  await expect(page.getByText('1 of 4 rings are ticked: the entry will say 1.')).toBeVisible()
  await press(page, /^It is so, save it/)
  await expect(page.getByText(/^Saved: repacked, one ring/)).toBeVisible()
  const { timeline } = await recordOf(api, tag)
  expect(timeline[0]?.event).toMatchObject({ rings: 1, gapLeft: 14 })
  expect(timeline[0]?.event).not.toHaveProperty('proved')
})

test('every target of the proof is large enough for a thumb', async ({ page, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-422', { left: 9, right: 9 })
  await signInAs(page, 'fitter', `/valves/${tag}/proof`)
  await page.getByRole('textbox', { name: 'Rings that go in' }).fill('5')
  for (const name of [/Rings in/, /Load in steps/, /Let go of the wheel/, /Read both gaps/, /Look it over/]) {
    await press(page, name)
    const targets = page
      .locator('main')
      .locator('button, label:has(input[type=checkbox]), label:has(input[type=radio]), summary, select')
    for (const target of await targets.all()) {
      const box = await target.boundingBox()
      expect([await target.textContent(), Math.round(box?.height ?? 0) >= 48]).toEqual([await target.textContent(), true])
    }
  }
})
