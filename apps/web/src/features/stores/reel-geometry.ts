import type { ReelToCut } from './queries.ts'

type Reel = Pick<ReelToCut, 'length' | 'pieces' | 'left' | 'isScrap'>

export interface ReelPart {
  readonly x: number
  readonly width: number
  /** What is cut here; null for the end that is left. */
  readonly piece: { readonly tag: string; readonly length: number; readonly says: string } | null
  /** Tag and length, the tag, or nothing: as much as the piece has room for. */
  readonly lettering: string
}

export interface ReelBar {
  readonly width: number
  readonly parts: readonly ReelPart[]
}

const PX_PER_LETTER = 6.6
const ROOM_BESIDE_PX = 8

/**
 * A reel as a bar to scale, its pieces in the order they are cut. Trims are too thin to draw: they stand between the
 * last piece and the end that is left.
 */
export function reelBar({ length, pieces, left }: Reel, pxPerMm: number): ReelBar {
  let at = 0
  const parts = pieces.flatMap((piece) =>
    Array.from({ length: piece.count }, (): ReelPart => {
      const x = at
      at += piece.length
      return {
        x: px(x * pxPerMm),
        width: px(piece.length * pxPerMm),
        piece,
        lettering: fitting([`${piece.tag} ${Math.round(piece.length)}`, piece.tag], piece.length * pxPerMm),
      }
    }),
  )
  const end: ReelPart = {
    x: px((length - left) * pxPerMm),
    width: px(left * pxPerMm),
    piece: null,
    lettering: fitting([`${Math.round(left)} left`, String(Math.round(left))], left * pxPerMm),
  }
  return { width: px(length * pxPerMm), parts: left > 0 ? [...parts, end] : parts }
}

const px = (value: number) => Math.round(value * 10) / 10

function fitting(wanted: readonly string[], width: number): string {
  return wanted.find((words) => words.length * PX_PER_LETTER + ROOM_BESIDE_PX <= width) ?? ''
}

/** All reels of a kit share one scale: the longest fills the width. */
export function reelScale(reels: readonly Pick<Reel, 'length'>[], width: number): number {
  const longest = Math.max(0, ...reels.map(({ length }) => length))
  return longest > 0 ? width / longest : 0
}

/** A ruler below the bars, in whole metres or tenths of one. */
export function metreMarks(longestMm: number, pxPerMm: number): { x: number; label: string }[] {
  const LEAST_APART_PX = 44
  const step = [100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000].find((mm) => mm * pxPerMm >= LEAST_APART_PX)
  if (step === undefined || !(longestMm > 0)) return []
  const count = Math.floor(longestMm / step + 1e-9) + 1
  return Array.from({ length: count }, (_, index) => ({
    x: px(index * step * pxPerMm),
    label: `${Number(((index * step) / 1000).toFixed(1))}${index === 0 ? ' m' : ''}`,
  }))
}
