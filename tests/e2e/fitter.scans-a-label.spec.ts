import { codeOf } from '../../apps/server/src/platform/paper/code.ts'
import { readyForTheField } from './field.ts'
import { aValveWithReading, expect, signInAs, test } from './people.ts'

test.use({ offlineOnPurpose: true })

const SIDE = 280

/** The code as it is printed on a label, as a picture. */
function pictureOf(text: string): string {
  const squares = codeOf(text, SIDE).canvas as { x: number; y: number; w: number; h: number }[]
  const drawn = squares.map(({ x, y, w, h }) => `<rect x="${x}" y="${y}" width="${w}" height="${h}"/>`).join('')
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${SIDE}" height="${SIDE}">${drawn}</svg>`
}

test('a fitter scans a label with the camera, without signal, and stands at the valve', async ({ page, context, api }) => {
  const { tag } = await aValveWithReading(api, 'ZZ-701', { left: 9, right: 9 })
  // The camera of the test sees the label; all behind it is real.
  await page.addInitScript(
    (svg) => {
      navigator.mediaDevices.getUserMedia = async () => {
        const canvas = Object.assign(document.createElement('canvas'), { width: 640, height: 480 })
        const pen = canvas.getContext('2d')!
        const picture = Object.assign(new Image(), { src: `data:image/svg+xml,${encodeURIComponent(svg)}` })
        await picture.decode()
        const draw = () => {
          pen.fillStyle = 'white'
          pen.fillRect(0, 0, 640, 480)
          pen.drawImage(picture, 180, 100, 280, 280)
        }
        draw()
        setInterval(draw, 100)
        return canvas.captureStream(10)
      }
    },
    pictureOf(`https://mill.example/v/${tag}`),
  )
  await signInAs(page, 'fitter', '/find')
  await readyForTheField(page)
  await context.setOffline(true)
  await page.getByRole('button', { name: 'Scan a label' }).tap()
  await expect(page.getByRole('heading', { name: tag })).toBeVisible({ timeout: 20_000 })
  await expect(page.getByRole('button', { name: /^Half turn, dry/ })).toBeVisible()
})

test('a fitter finds a valve by a part of its tag without signal, and its neighbours in the walk', async ({
  page,
  context,
  api,
}) => {
  const { tag } = await aValveWithReading(api, 'ZZ-702', { left: 9, right: 9 })
  await signInAs(page, 'fitter', '/find')
  await readyForTheField(page)
  await context.setOffline(true)
  await page.getByLabel('Part of a tag').fill('zz702')
  await expect(page.getByRole('heading', { name: `Near ${tag} in the walk` })).toBeVisible()
  await page.getByRole('link', { name: tag }).first().tap()
  await expect(page.getByRole('button', { name: /^Half turn, dry/ })).toBeVisible()
})
