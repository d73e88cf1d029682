import { addArea } from '@glandkeeper/contract/areas'
import { changeAreaWalk, listCrews } from '@glandkeeper/contract/crews'
import { sendEvents } from '@glandkeeper/contract/events'
import { showPlans } from '@glandkeeper/contract/round-plans'
import { listRounds } from '@glandkeeper/contract/rounds'
import { addValve } from '@glandkeeper/contract/valves'
import { aLeak, aMissedVisit } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { expect, signInAs, test } from './people.ts'

// One plan of the site: another test that planned at the same time would take its draft away.
test.describe.configure({ mode: 'serial' })

test('a planner plans the year, moves a round, pins a valve, and what a fitter misses comes back', async ({ page, api }) => {
  test.setTimeout(180_000)
  const planner = await api('planner')
  const post = async (path: string, data: unknown) => {
    const answer = await planner.post(path, { data })
    expect(answer.status(), await answer.text()).toBeLessThan(300)
    return answer.json()
  }
  // An area of the test's own with five valves that nobody has ever seen: they are due at once.
  await post(addArea.path, { code: 'ZP', name: 'Plan test hall', walkPosition: 990, level: 0 })
  const { crews } = listCrews.ok.parse(await (await planner.get(listCrews.path)).json())
  const crew = crews[0]!
  await planner.put(changeAreaWalk.path.replace(':code', 'ZP'), {
    data: { setUpMinutes: 20, skill: null, crewId: crew.crewId, walkPlan: null },
  })
  const ids = new Map<string, string>()
  for (const number of [1, 2, 3, 4, 5]) {
    const tag = `ZP-${number}`
    const valve = aValve({ areaCode: 'ZP', tag, walkPosition: number * 10, level: 0, access: 'floor', criticality: 'high' })
    ids.set(tag, addValve.ok.parse(await post(addValve.path, valve)).valveId)
  }

  await signInAs(page, 'planner', '/rounds/plan')
  await page.getByRole('button', { name: /^(Make a plan|Plan again)$/ }).click()
  await expect(page.getByRole('heading', { name: /^(The first plan|What moves, and why)$/ })).toBeVisible({ timeout: 60_000 })
  await page.getByRole('button', { name: 'Take this plan' }).click()
  await expect(page.getByText(/in use since/)).toBeVisible()

  // Whole, in the first weeks: this area opens once for all five.
  const block = page.getByRole('button', { name: /^Plan test hall, week \d+, 5 visits/ }).first()
  await expect(block).toBeVisible()
  const weekOf = async (name: RegExp) =>
    Number(/week (\d+)/.exec((await page.getByRole('button', { name }).first().getAttribute('aria-label'))!)![1])
  const before = await weekOf(/^Plan test hall, week \d+, 5 visits/)

  // Dragged two weeks on: the consequence shows before anything is moved, and may be left.
  const from = (await block.boundingBox())!
  await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2)
  await page.mouse.down()
  await page.mouse.move(from.x + from.width / 2 + 2.5 * from.width, from.y, { steps: 5 })
  await expect(page.getByText(/^Plan test hall, 5 visits, week \d+ to \d+\. Week \d+ then has/)).toBeVisible()
  await page.mouse.up()
  await page.getByRole('button', { name: 'Leave it' }).click()

  // Moved by the arrow key: the consequence at once, then the move.
  await block.focus()
  await page.keyboard.press('ArrowRight')
  await expect(page.getByText(/^Plan test hall, 5 visits, week \d+ to \d+\. Week \d+ then has/)).toBeVisible()
  await page.getByRole('button', { name: /^Move to week/ }).click()
  await expect(page.getByRole('button', { name: /^Plan test hall, week \d+, 5 visits, .*pinned/ }).first()).toBeVisible()
  const moved = await weekOf(/^Plan test hall, week \d+, 5 visits, .*pinned/)
  expect(moved).not.toBe(before)

  // One valve pinned to the week it was in; the other four stay where they were moved to.
  await page
    .getByRole('button', { name: /^Plan test hall, week \d+, 5 visits, .*pinned/ })
    .first()
    .click()
  await page.getByRole('button', { name: 'Plan test hall', exact: true }).click()
  const row = page.getByRole('row').filter({ hasText: 'ZP-3' }).last()
  await row.getByRole('button', { name: /^Take out the pin/ }).click()
  await row.getByRole('button', { name: 'Pin ZP-3 to a week' }).click()
  await row.getByLabel('Week for ZP-3').selectOption({ label: `week ${before}` })
  await row.getByRole('button', { name: 'Pin ZP-3', exact: true }).click()
  await expect(page.getByRole('button', { name: /^Plan test hall, week \d+, 4 visits/ }).first()).toBeVisible()

  // The round of the four is made, two are walked, one could not be done, one nobody was at.
  await page.getByRole('button', { name: /^Make the round/ }).click()
  await expect(page.getByRole('link', { name: /^Plan test hall, week \d+$/ })).toBeVisible()
  const { rounds } = listRounds.ok.parse(await (await planner.get(listRounds.path)).json())
  const round = rounds.find(({ areaCode }) => areaCode === 'ZP')!
  expect(round.stops.map(({ tag }) => tag).toSorted()).toEqual(['ZP-1', 'ZP-2', 'ZP-4', 'ZP-5'])
  const now = new Date().toISOString()
  await post(sendEvents.path, {
    events: [
      aLeak({ valveId: ids.get('ZP-1')!, takenAt: now, leak: 'dry' }),
      aLeak({ valveId: ids.get('ZP-2')!, takenAt: now, leak: 'dry' }),
      aMissedVisit({ valveId: ids.get('ZP-4')!, takenAt: now, reason: 'too hot' }),
    ],
  })
  await page.goto('/rounds')
  const listed = page.getByRole('listitem').filter({ hasText: round.name })
  await expect(listed.getByText('3 of 4')).toBeVisible()
  await listed.getByRole('button', { name: 'Close it' }).click()
  await expect(listed).toHaveCount(0)

  // Planned again, what was left out is back within the weeks to catch up, and what was seen is not.
  await page.goto('/rounds/plan')
  await page.getByLabel('Weeks that stay as they are').selectOption({ label: 'none' })
  await page.getByRole('button', { name: 'Plan again' }).click()
  await expect(page.getByRole('button', { name: 'Take this plan' })).toBeVisible({ timeout: 60_000 })
  await page.getByRole('button', { name: 'Take this plan' }).click()
  await expect(page.getByText(/in use since/)).toBeVisible()
  const { taken } = showPlans.ok.parse(await (await planner.get(showPlans.path)).json())
  const visits = async (tag: string) =>
    (
      (await (await planner.get(`/api/planned-visits?tag=${tag}`)).json()) as {
        visits: { cause: string; weekOf: string; earliest: string; latest: string }[]
      }
    ).visits
  for (const tag of ['ZP-4', 'ZP-5'])
    expect((await visits(tag))[0]).toMatchObject({ cause: 'missed on a round', earliest: taken!.startsOn })
  const soon = new Date(Date.now() + 21 * 86_400_000).toISOString().slice(0, 10)
  for (const tag of ['ZP-4', 'ZP-5']) expect((await visits(tag))[0]!.weekOf < soon).toBe(true)
  expect((await visits('ZP-1'))[0]!.cause).not.toBe('missed on a round')
  expect((await visits('ZP-3'))[0]).toMatchObject({ isPinned: true })
})
