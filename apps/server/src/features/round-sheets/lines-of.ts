import { brokenInto, widthAtMost } from '../../platform/paper/lettering.ts'

/**
 * Closer bounds than those of a label for the upright face: a form is full of small print, and what is put too wide by a
 * third is a third of the paper. A test holds the face to them. For bold letters they are too narrow.
 */
const bounds: readonly (readonly [letters: RegExp, width: number])[] = [
  [/[ .,:;'|/()Iijlrtf-]/, 0.375],
  [/[a-ln-vx-z0-9]/, 0.575],
  [/[A-LN-VX-Z]/, 0.712],
  [/…/, 0.9],
]

export function uprightAtMost(text: string): number {
  return Array.from(text).reduce(
    (sum, letter) => sum + (bounds.find(([letters]) => letters.test(letter))?.[1] ?? widthAtMost(letter)),
    0,
  )
}

/**
 * As many lines as there is room for, broken at blanks: a figure is never torn at its point. A word longer than a line is
 * broken where it must be, and the last line shows when more was there.
 *
 * @param width of the cell, in parts of the size
 */
export function linesOf(text: string, width: number, most: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ').filter(Boolean)) {
    const longer = [lines.at(-1), word].filter((part) => part !== undefined).join(' ')
    if (uprightAtMost(longer) <= width) lines.splice(Math.max(lines.length - 1, 0), 1, longer)
    else lines.push(...(uprightAtMost(word) <= width ? [word] : brokenInto(word, width)))
  }
  if (lines.length <= most) return lines
  const kept = lines.slice(0, Math.max(most, 0))
  const last = Array.from(kept.pop() ?? '')
  while (last.length > 0 && uprightAtMost(`${last.join('')}…`) > width) last.pop()
  return most < 1 ? [] : [...kept, `${last.join('').trimEnd()}…`]
}
