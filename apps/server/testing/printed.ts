import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { pathToFileURL } from 'node:url'
import { inflateSync } from 'node:zlib'
import { getDocumentProxy } from 'unpdf'

/** Points from the top left of the sheet. */
export interface Piece {
  readonly says: string
  readonly x: number
  readonly y: number
  readonly width: number
  readonly size: number
}
interface Rectangle {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}
export interface PrintedPage {
  readonly width: number
  readonly height: number
  readonly pieces: readonly Piece[]
  /** Read when they are asked for. */
  readonly rectangles: () => readonly Rectangle[]
}

/** A PDF as printed: what each page says and where, and every rectangle that is drawn on it. */
export async function printedPages(bytes: Uint8Array): Promise<PrintedPage[]> {
  const pdf = await getDocumentProxy(new Uint8Array(bytes))
  const rectanglesOn = rectanglesIn(Buffer.from(bytes))
  return Promise.all(
    Array.from({ length: pdf.numPages }, async (_, index) => {
      const page = await pdf.getPage(index + 1)
      const [, , width = 0, height = 0] = page.view as number[]
      const { items } = await page.getTextContent()
      const pieces = items.flatMap((item): Piece[] => {
        if (!('str' in item) || item.str.trim() === '') return []
        const [size = 0, , , , x = 0, foot = 0] = item.transform as number[]
        return [{ says: item.str, x, y: height - foot, width: item.width, size }]
      })
      return { width, height, pieces, rectangles: () => rectanglesOn(index) }
    }),
  )
}

/** What stands in the largest letters near the top of a page. */
export function tagOf({ pieces }: PrintedPage): string {
  return pieces.filter(({ y }) => y < 70).toSorted((one, other) => other.size - one.size)[0]?.says ?? ''
}

/** From the drawing instructions themselves: the library that reads the text does not hand them out on every Node. */
function rectanglesIn(file: Buffer): (page: number) => Rectangle[] {
  const text = file.toString('latin1')
  const begins = new Map([...text.matchAll(/\n(\d+) 0 obj\n/g)].map(({ 1: id, index }) => [id, index]))
  const from = (id: string) => text.slice(begins.get(id))
  const pages = [.../\/Kids \[(.*?)\]/.exec(text)![1]!.matchAll(/(\d+) 0 R/g)].map(([, id]) => id!)
  return (page) => {
    const contents = /\/Contents (\d+) 0 R/.exec(from(pages[page]!))![1]!
    const start = text.indexOf('stream\n', begins.get(contents)) + 'stream\n'.length
    const length = Number(/\/Length (\d+)/.exec(from(contents))![1])
    const instructions = inflateSync(file.subarray(start, start + length)).toString('latin1')
    return [...instructions.matchAll(/^([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+) re$/gm)].map((found) => {
      const [x, y, width, height] = found.slice(1).map(Number) as [number, number, number, number]
      return { x, y, width, height }
    })
  }
}

interface CodeReader {
  prepareZXingModule: (options: { overrides: { wasmBinary: ArrayBuffer } }) => void
  readBarcodes: (
    picture: { data: Uint8ClampedArray; width: number; height: number },
    options: { formats: string[]; maxNumberOfSymbols: number },
  ) => Promise<{ isValid: boolean; text: string; position: { topLeft: { x: number; y: number } } }[]>
}

const PIXELS_PER_POINT = 4

/** Every code on a page with its corner in points: drawn on a bitmap, and read by what the web app reads a camera with. */
export async function codesOn({ width, height, rectangles }: PrintedPage): Promise<{ text: string; x: number; y: number }[]> {
  const web = createRequire(new URL('../../web/package.json', import.meta.url))
  const reader = (await import(pathToFileURL(web.resolve('zxing-wasm/reader')).href)) as CodeReader
  const wasm = readFileSync(web.resolve('zxing-wasm/reader/zxing_reader.wasm'))
  reader.prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } })
  const picture = bitmapOf(Math.ceil(width * PIXELS_PER_POINT), Math.ceil(height * PIXELS_PER_POINT), rectangles())
  const codes = await reader.readBarcodes(picture, { formats: ['QRCode'], maxNumberOfSymbols: 200 })
  return codes
    .filter(({ isValid }) => isValid)
    .map(({ text, position: { topLeft } }) => ({ text, x: topLeft.x / PIXELS_PER_POINT, y: topLeft.y / PIXELS_PER_POINT }))
}

function bitmapOf(width: number, height: number, rectangles: readonly Rectangle[]) {
  const data = new Uint8ClampedArray(width * height * 4).fill(255)
  const pixel = (point: number) => Math.round(point * PIXELS_PER_POINT)
  for (const one of rectangles)
    for (let y = pixel(one.y); y < pixel(one.y + one.height); y += 1)
      for (let x = pixel(one.x); x < pixel(one.x + one.width); x += 1) data.fill(0, (y * width + x) * 4, (y * width + x) * 4 + 3)
  return { data, width, height }
}
