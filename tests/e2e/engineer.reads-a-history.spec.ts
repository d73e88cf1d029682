import { aCorrection } from '@glandkeeper/fixtures/a-reading'
import { aValveWithReading, expect, nameOf, signInAs, test } from './people.ts'

test('an engineer opens a valve and sees who did what, when, and what was put right', async ({ page, api }) => {
  const { tag, valveId } = await aValveWithReading(api, 'ZZ-501', { left: 7.4, right: 6.6 })
  const fitter = await api('fitter')
  const history = (await (await fitter.get(`/api/valves/${tag}`)).json()) as { timeline: { event: { id: string } }[] }
  const correction = aCorrection({
    valveId,
    takenAt: '2026-05-02T09:00:00Z',
    corrects: history.timeline[0]!.event.id,
    reason: 'read the other valve',
    replacement: null,
  })
  await fitter.post('/api/events', { data: { events: [correction] } })

  await signInAs(page, 'engineer', `/?find=${tag}`)
  await page.getByRole('link', { name: tag }).click()
  await expect(page.getByRole('heading', { name: tag })).toBeVisible()
  await expect(page.getByText('Gap 7.4 mm left, 6.6 mm right', { exact: false }).first()).toBeVisible()
  await expect(page.getByText('read the other valve', { exact: false }).first()).toBeVisible()
  await expect(page.getByText(nameOf('fitter')).first()).toBeVisible()
  await expect(page.getByText(nameOf('planner')).first()).toBeVisible()
  await expect(page.getByText(/1 May 2026/).first()).toBeVisible()
  await expect(page.getByRole('img', { name: /section/i })).toBeVisible()
  await expect(page.getByRole('img', { name: /reserve/i })).toBeVisible()
})
