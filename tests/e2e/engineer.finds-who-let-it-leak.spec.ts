import { addArea } from '@glandkeeper/contract/areas'
import { sendEvents } from '@glandkeeper/contract/events'
import { addValve } from '@glandkeeper/contract/valves'
import { aLeak, aNip, aReading, aRepack } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import type { APIRequestContext } from '@playwright/test'
import { readFileSync, writeFileSync } from 'node:fs'
import { expect, signInAs, test } from './people.ts'

const SERVICE = 'test liquor'
/** The last March that is over. */
const now = new Date()
const year = now.getMonth() > 2 ? now.getFullYear() : now.getFullYear() - 1
const at = (monthAndDay: string, back = 0) => `${year - back}-${monthAndDay}T08:00:00Z`

/** A service of the test's own: one leak in February, three in March, and one valve whose nips came closer before. */
async function aServiceThatLeaks(planner: APIRequestContext) {
  const post = async (path: string, data: unknown) => {
    const answer = await planner.post(path, { data })
    expect(answer.status(), await answer.text()).toBeLessThan(300)
    return answer.json() as Promise<unknown>
  }
  await post(addArea.path, { code: 'ZL', name: 'Leak test hall', walkPosition: 995, level: 0 })
  const add = async (tag: string) =>
    addValve.ok.parse(await post(addValve.path, { ...aValve({ tag, areaCode: 'ZL' }), service: SERVICE })).valveId
  const [first, second, third] = [await add('ZL-1'), await add('ZL-2'), await add('ZL-3')]
  const nip = (day: string, takenBy: string, turns = 0.5) =>
    aNip({
      valveId: first,
      takenAt: at(day, day > '09' ? 1 : 0),
      turnsLeft: turns,
      turnsRight: turns,
      leakBefore: 'dry',
      leakAfter: undefined,
      takenBy,
    })
  const events = [
    aRepack({ valveId: first, takenAt: at('09-01', 1), gapLeft: 18, gapRight: 18 }),
    ...['10-01', '11-10', '12-15'].map((day) => nip(day, 'A. Crewe')),
    nip('01-05', 'A. Crewe'),
    nip('01-20', 'J. Harrow', 2),
    aLeak({ valveId: first, takenAt: at('03-03'), leak: 'drip' }),
    aReading({ valveId: first, takenAt: at('03-05'), gapLeft: 9, gapRight: 9 }),
    aLeak({ valveId: second, takenAt: at('02-10') }),
    aReading({ valveId: second, takenAt: at('02-11') }),
    aLeak({ valveId: second, takenAt: at('03-20') }),
    aLeak({ valveId: third, takenAt: at('03-21') }),
  ]
  await post(sendEvents.path, { events })
}

test('an engineer goes from leaks that rose in March to the valve, the nip, the person and the export, and checks it', async ({
  page,
  api,
}, testInfo) => {
  await aServiceThatLeaks(await api('planner'))
  await signInAs(page, 'engineer', `/leaks?service=${encodeURIComponent(SERVICE)}`)

  // Leaks rose in March: the month is pressed, the list holds its three.
  await expect(page.getByRole('link', { name: new RegExp(`^February ${year}: 1 leak first seen`) })).toBeVisible()
  await page.getByRole('link', { name: new RegExp(`^March ${year}: 3 leaks first seen`) }).click()
  await expect(page.getByText('ZL-2').first()).toBeVisible()
  await page.getByRole('link', { name: 'ZL-1' }).first().click()

  // The valve, the nip, the person.
  await expect(page.getByRole('heading', { name: 'Leaks of ZL-1' })).toBeVisible()
  await expect(page.getByText(/nips came closer, from 38 to 18 days apart: 40, 35, 21, 15/)).toBeVisible()
  await expect(page.getByText(/J\. Harrow, .*before: Taken up 2\sturns on each nut/)).toBeVisible()

  // The export.
  await page.getByRole('link', { name: 'Evidence of this valve' }).click()
  await expect(page.getByText('8 entries.')).toBeVisible()
  const downloading = page.waitForEvent('download')
  await page.getByRole('link', { name: 'Signed file (JSON)' }).click()
  const file = testInfo.outputPath('evidence.json')
  await (await downloading).saveAs(file)

  // And it proves itself, until somebody makes another person of the one who did it.
  const chooser = page.getByLabel('Choose a signed file (JSON), or drop it here')
  await chooser.setInputFiles(file)
  await expect(page.getByText('Nothing in this file was changed')).toBeVisible()
  const changed = testInfo.outputPath('changed.json')
  const whole = readFileSync(file, 'utf8')
  expect(whole).toContain('J. Harrow')
  writeFileSync(changed, whole.replaceAll('J. Harrow', 'A. Crewe'))
  await chooser.setInputFiles(changed)
  await expect(page.getByText('This file does not stand')).toBeVisible()

  // The whole record.
  await page.getByRole('button', { name: 'Prove the record now' }).click()
  await expect(page.getByText('The record is whole')).toBeVisible({ timeout: 60_000 })
})
