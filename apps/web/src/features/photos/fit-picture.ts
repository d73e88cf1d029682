/** Width and height of a picture in pixels. */
export interface Pixels {
  readonly width: number
  readonly height: number
}

/**
 * The size of a picture scaled down so that neither side is longer than `most`; never scaled up.
 *
 * @example fitWithin({ width: 4000, height: 3000 }, 1600) // → { width: 1600, height: 1200 }
 */
export function fitWithin({ width, height }: Pixels, most: number): Pixels {
  const scale = Math.min(1, most / Math.max(width, height))
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) }
}

const QUALITIES = [0.8, 0.7, 0.6, 0.5, 0.4, 0.3]

/** Encodes at less and less quality until it fits; at the lowest it is taken as it is, and the server may refuse it. */
export async function encodedWithin(encode: (quality: number) => Promise<Blob>, mostBytes: number): Promise<Blob> {
  let smallest = await encode(QUALITIES[0]!)
  for (const quality of QUALITIES.slice(1)) {
    if (smallest.size <= mostBytes) break
    smallest = await encode(quality)
  }
  return smallest
}
