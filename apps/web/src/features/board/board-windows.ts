export const WINDOW_ROWS = 100

/** The offsets of the windows that hold rows `first` to `last`, both counted in; never past the end of the board. */
export function windowsFor(first: number, last: number, total: number): number[] {
  const end = Math.min(last, total - 1)
  const offsets: number[] = []
  for (let offset = windowOf(Math.max(first, 0)); offset <= end; offset += WINDOW_ROWS) offsets.push(offset)
  return offsets
}

/** The offset of the window that holds a row. */
export function windowOf(row: number): number {
  return Math.floor(row / WINDOW_ROWS) * WINDOW_ROWS
}
