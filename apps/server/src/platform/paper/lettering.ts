/**
 * No letter is wider than this, in parts of its size, in the lettering face, bold or not. A test holds the face to it.
 * Bounds and not the widths themselves: a letter that is put too wide only makes the print a little smaller.
 */
const bounds: readonly (readonly [letters: RegExp, width: number])[] = [
  [/[ .,:;'!|/()_Iijlrtf-]/, 0.47],
  [/[MWmw%&@…–—·°]/, 1],
  [/[\u0020-\u007e]/, 0.77],
  [/[ŒœŴÆæƕƜƢǄ-ǌǢǣǱ-ǳǶǼǽȸȹ©®¼½¾ͲΉϢЉЊЖжШшЩщЫЮѠ-ѿҖҠҤҦҧҴҼҾӁӍӔӕӜӸԀ-ԯ]/, 1.4],
  [/[\u00a0-\u024f\u0370-\u052f]/, 0.91],
]
const WIDEST = 1.82
/** From the foot of a line to the foot of the next, in parts of the size. */
export const LINE = 1.23
const SMALLEST_TAG = 5

/** At least as wide as the text will be, in parts of its size. */
export function widthAtMost(text: string): number {
  return Array.from(text).reduce((sum, letter) => sum + (bounds.find(([letters]) => letters.test(letter))?.[1] ?? WIDEST), 0)
}

/**
 * The text in lines no wider than `width` (in parts of its size), broken behind a blank or a sign where there is one.
 *
 * @example brokenInto('BM-3307', 4) // → ['BM-', '3307']
 */
export function brokenInto(text: string, width: number): string[] {
  const lines: string[] = []
  let line = ''
  const fits = (more: string) => widthAtMost((line + more).trimEnd()) <= width
  const end = () => {
    if (line.trim() !== '') lines.push(line.trim())
    line = ''
  }
  for (const piece of text.match(/[^\s./_+-]+[\s./_+-]?|[\s./_+-]/gu) ?? []) {
    if (!fits(piece)) end()
    for (const letter of piece) {
      if (!fits(letter)) end()
      line += letter
    }
  }
  end()
  return lines
}

/** As many of its lines as there is room for; the last one shows that the text goes on. */
export function firstLines(text: string, width: number, most: number): string[] {
  const lines = brokenInto(text, width)
  if (lines.length <= most) return lines
  const kept = lines.slice(0, Math.max(most, 0))
  const last = kept.pop()
  if (last === undefined) return []
  const letters = Array.from(last)
  while (letters.length > 0 && widthAtMost(`${letters.join('')}…`) > width) letters.pop()
  return [...kept, `${letters.join('').trimEnd()}…`]
}

interface Room {
  /** Points. */
  readonly width: number
  readonly height: number
  readonly largest: number
}

/** A tag in one line as large as it goes; in several where one line would be small print, and then as large as those go. */
export function tagLettering(tag: string, { width, height, largest }: Room): { size: number; lines: string[] } {
  const inOneLine = width / widthAtMost(tag)
  if (inOneLine >= largest / 2) return { size: Math.min(largest, inOneLine), lines: [tag] }
  for (let size = largest / 2; ; size *= 0.95) {
    const lines = brokenInto(tag, width / size)
    if (lines.length * size * LINE <= height || size <= SMALLEST_TAG) return { size, lines }
  }
}
