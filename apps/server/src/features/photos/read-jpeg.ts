/** Width and height in pixels. */
export interface PictureSize {
  readonly width: number
  readonly height: number
}

const START = 0xd8
const END = 0xd9
const SCAN = 0xda
/** Baseline, extended and progressive: the kinds of JPEG that browsers show. */
const FRAMES = new Set([0xc0, 0xc1, 0xc2])

/**
 * The size of a JPEG picture by its bytes: every segment from the start marker to the end marker is walked, and nothing
 * may stand before, between or after them, where a page or a program could hide. The picture itself is not decoded.
 *
 * @returns null when the bytes are no whole JPEG of a kind that browsers show; never throws
 */
export function readJpeg(bytes: Uint8Array): PictureSize | null {
  if (bytes[0] !== 0xff || bytes[1] !== START) return null
  let size: PictureSize | null = null
  let hasScan = false
  for (let at = 2; bytes[at] === 0xff;) {
    const marker = bytes[at + 1] ?? 0
    if (marker === END) return hasScan && at + 2 === bytes.length ? size : null
    // Any number of 0xff may stand before a marker.
    if (marker === 0xff) {
      at += 1
      continue
    }
    const length = numberAt(bytes, at + 2)
    if (!isSegment(marker) || length < 2) return null
    if (FRAMES.has(marker)) {
      if (size !== null) return null
      size = sizeIn(bytes.subarray(at + 4, at + 2 + length))
    }
    at += 2 + length
    if (marker === SCAN) {
      if (size === null) return null
      hasScan = true
      at = endOfScan(bytes, at)
    }
  }
  return null
}

/** Tables, scans, comments, application data and frames have a length; other markers have no place between them. */
function isSegment(marker: number): boolean {
  const isFrame = FRAMES.has(marker)
  const isTable = marker === 0xc4 || (marker >= SCAN && marker <= 0xdd)
  return isFrame || isTable || (marker >= 0xe0 && marker <= 0xef) || marker === 0xfe
}

/** Precision, height, width, components: a picture without height or width is none. */
function sizeIn(frame: Uint8Array): PictureSize | null {
  const height = numberAt(frame, 1)
  const width = numberAt(frame, 3)
  return width > 0 && height > 0 ? { width, height } : null
}

/** Inside a scan 0xff is followed by zero, where it is data, or by a restart marker. */
function endOfScan(bytes: Uint8Array, from: number): number {
  let at = bytes.indexOf(0xff, from)
  while (at >= 0) {
    const next = bytes[at + 1] ?? 0xff
    if (next !== 0 && !(next >= 0xd0 && next <= 0xd7)) return at
    at = bytes.indexOf(0xff, at + 2)
  }
  return bytes.length
}

/** Two bytes, the high one first; past the end they are zero. */
function numberAt(bytes: Uint8Array, at: number): number {
  return ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0)
}
