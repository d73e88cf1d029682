import { addArea } from '@glandkeeper/contract/areas'
import { type FieldEvent, sendEvents } from '@glandkeeper/contract/events'
import { makeRound, type Round } from '@glandkeeper/contract/rounds'
import { addValve, showValve, type ValveHistory } from '@glandkeeper/contract/valves'
import { aReading } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { type APIRequestContext, expect, type Page } from '@playwright/test'

type Api = (role: 'planner' | 'fitter' | 'engineer') => Promise<APIRequestContext>

/** An area of the test's own with so many valves, each read once, and a round of them for whoever has time. */
export async function aRound(api: Api, areaCode: string, stops: number): Promise<Round> {
  const planner = await api('planner')
  const post = async (path: string, data: unknown) => {
    const answer = await planner.post(path, { data })
    expect(answer.status(), await answer.text()).toBeLessThan(300)
    return answer.json()
  }
  await post(addArea.path, { code: areaCode, name: `Test area ${areaCode}`, walkPosition: 900, level: 2 })
  const events: FieldEvent[] = []
  for (let stop = 1; stop <= stops; stop++) {
    const tag = `${areaCode}-${String(stop).padStart(2, '0')}`
    const { valveId } = addValve.ok.parse(
      await post(addValve.path, aValve({ areaCode, tag, walkPosition: stop * 10, level: 2, description: 'Test drain' })),
    )
    events.push(aReading({ valveId, takenAt: '2026-05-01T08:00:00Z', gapLeft: 9, gapRight: 9 }))
  }
  await post(sendEvents.path, { events })
  const round = { name: `Round ${areaCode}`, walkOn: '2026-12-01', fitterId: null, areaCodes: [areaCode], dueBy: null }
  return makeRound.ok.parse(await post(makeRound.path, round))
}

/** Until the device could lose its signal: the worker serves the pages, and the register has been read whole. */
export async function readyForTheField(page: Page): Promise<void> {
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null || navigator.serviceWorker.ready.then(() => true))
  await page.reload()
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  await expect(page.getByRole('status').filter({ hasText: /^last sync/ })).toBeVisible({ timeout: 30_000 })
}

/** What the record has of a valve. */
export async function recordOf(api: Api, tag: string): Promise<ValveHistory> {
  const answer = await (await api('engineer')).get(showValve.path.replace(':tag', encodeURIComponent(tag)))
  return showValve.ok.parse(await answer.json())
}

/** Entries that are on the device, read where the page keeps them. */
export function onDevice(page: Page): Promise<{ id: string; state: string; code: string | null }[]> {
  return page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('glandkeeper-outbox')
        opening.addEventListener('error', () => reject(opening.error ?? new Error('not opened')))
        opening.addEventListener('success', () => {
          const reading = opening.result.transaction('entries').objectStore('entries').getAll()
          reading.addEventListener('error', () => reject(reading.error ?? new Error('not read')))
          reading.addEventListener('success', () => {
            opening.result.close()
            resolve(
              reading.result.map(({ event, state, problem }) => ({
                id: event.id,
                state,
                code: problem === null ? null : problem.code,
              })),
            )
          })
        })
      }),
  )
}

/** Puts entries where the page keeps them, as many as no thumb could make in a test. */
export async function putOnDevice(page: Page, events: readonly FieldEvent[], personId: string): Promise<void> {
  const entries = events.map((event) => ({ event, personId, tag: 'test', says: event.kind, state: 'waiting', problem: null }))
  await page.evaluate(
    (rows) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('glandkeeper-outbox')
        opening.addEventListener('error', () => reject(opening.error ?? new Error('not opened')))
        opening.addEventListener('success', () => {
          const writing = opening.result.transaction('entries', 'readwrite', { durability: 'strict' })
          for (const row of rows) writing.objectStore('entries').add(row)
          writing.addEventListener('abort', () => reject(writing.error ?? new Error('not written')))
          writing.addEventListener('complete', () => {
            opening.result.close()
            resolve()
          })
        })
      }),
    entries,
  )
}

/** The page tries again at once, as it does when signal comes back. */
export function wake(page: Page): Promise<boolean> {
  return page.evaluate(() => dispatchEvent(new Event('online')))
}
