import { labelGrids, LabelSize } from '@glandkeeper/contract/labels'
import { describe, expect, it } from 'vitest'
import { codesOn } from '../../../testing/printed.ts'
import { MANY_CODES, printed } from '../../../testing/printed-labels.ts'
import { addLike, withValves } from '../../../testing/valves-alike.ts'

const points = (millimetres: number) => (millimetres * 72) / 25.4

describe.each(LabelSize.options)('labels of %s mm', (size) => {
  const { columns, rows, width, height } = labelGrids[size]
  const onOne = columns * rows
  /** Which place of the sheet a point is in. */
  const placeOf = ({ x, y }: { x: number; y: number }) =>
    Math.floor((y - points((297 - rows * height) / 2)) / points(height)) * columns +
    Math.floor((x - points((210 - columns * width) / 2)) / points(width))

  it(
    `${onOne} on a sheet of A4, one more on the next; each place has a tag and the code that opens it`,
    { timeout: MANY_CODES },
    async () => {
      const pages = await printed(await withValves(onOne + 1), `size=${size}`)
      expect(pages.map(({ pieces }) => pieces.filter(({ says }) => /^BH-\d+$/.test(says)).length)).toEqual([onOne, 1])
      for (const [index, page] of pages.entries()) {
        expect([Math.round((page.width * 25.4) / 72), Math.round((page.height * 25.4) / 72)]).toEqual([210, 297])
        const read = new Map((await codesOn(page)).map((code) => [placeOf(code), code.text]))
        const tags = page.pieces.filter(({ says }) => /^BH-\d+$/.test(says))
        expect(read.size).toBe(tags.length)
        for (const tag of tags) {
          expect(tag.says).toBe(`BH-${index * onOne + placeOf(tag) + 1}`)
          expect(read.get(placeOf(tag))).toBe(`http://mill.example/v/${tag.says}`)
        }
      }
    },
  )

  it.each([
    ['the longest tag there may be, of the widest letters', 'W'.repeat(40)],
    ['the same in Cyrillic', 'Ѩ'.repeat(40)],
    ['one with blanks and signs', 'BH 33.07/A-2_left+right SECOND GROUP 14'],
    ['a short one', 'V1'],
  ])('%s keeps within its label and clear of the code', async (_, tag) => {
    const tags = Array.from({ length: onOne }, (__, index) => `${tag.slice(0, 38)}${String(index + 1).padStart(2, '0')}`)
    const server = await withValves(1, { description: 'M'.repeat(200), tag: tags[0]! })
    await addLike(server, tags.slice(1))
    const [page] = await printed(server, `size=${size}`)
    const codes = await codesOn(page!)
    expect(codes).toHaveLength(onOne)
    for (const piece of page!.pieces) {
      const top = { x: piece.x, y: piece.y - piece.size }
      const place = placeOf(top)
      const code = codes.find((one) => placeOf(one) === place)
      expect([piece.says, placeOf({ x: piece.x, y: piece.y + piece.size * 0.25 })]).toEqual([piece.says, place])
      expect([piece.says, piece.x + piece.width < code!.x]).toEqual([piece.says, true])
    }
    for (const { x, y, width: wide, height: high } of page!.rectangles())
      expect([x >= 0, y >= 0, x + wide <= page!.width, y + high <= page!.height]).toEqual([true, true, true, true])
  })
})
