import path from 'node:path'
import { sendPhoto } from '@glandkeeper/contract/photos'
import { aValveWithReading, expect, signInAs, test } from './people.ts'

test.use({ refusals: [422] })

test('a photo the server refuses is shown with its reason, sent again or set aside, and signing out waits for it', async ({
  page,
  api,
}) => {
  const { tag } = await aValveWithReading(api, 'ZZ-530', { left: 9, right: 9 })
  await signInAs(page, 'fitter', `/valves/${tag}/log`)
  const photos = `**${sendPhoto.path.replace(':digest', '*')}`
  let refused = 0
  await page.route(photos, (route) => {
    if (route.request().method() !== 'PUT') return route.continue()
    refused += 1
    return route.fulfill({
      status: 422,
      contentType: 'application/problem+json',
      body: JSON.stringify({
        type: '/problems/photo/not-a-jpeg',
        code: 'photo/not-a-jpeg',
        title: 'This is not a photo the register keeps',
        status: 422,
      }),
    })
  })
  await page
    .getByLabel('Photo', { exact: true })
    .setInputFiles(path.join(import.meta.dirname, '../../apps/web/public/mark-512.png'))
  await expect(page.getByText('1 photo')).toBeVisible()
  await page.getByRole('button', { name: /^Half turn, dry/ }).tap()
  await expect(page.getByText(/^Saved: half a turn/)).toBeVisible()
  await page.goto('/waiting')
  await expect(page.getByText('This is not a photo the register keeps')).toBeVisible()
  await expect(page.getByRole('link', { name: 'Sign out after 1 unsent' })).toBeVisible()
  // Once more, and refused once more; nothing sends it for ever by itself.
  const before = refused
  await page.getByRole('button', { name: 'Send it again' }).tap()
  await expect.poll(() => refused).toBe(before + 1)
  await expect(page.getByText('This is not a photo the register keeps')).toBeVisible()
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Download it' }).tap()])
  expect(download.suggestedFilename()).toMatch(/^photo-[0-9a-f]{12}\.jpg$/)
  await page.getByRole('button', { name: /^Set it aside/ }).tap()
  await expect(page.getByText('Nothing waits')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Sign out', exact: true })).toBeVisible()
})
