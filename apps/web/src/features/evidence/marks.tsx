/** Two links that hold, or one that has come open: told apart without colour, and always with words. */
export function ChainMark({ isWhole }: { isWhole: boolean }) {
  return (
    <svg width="30" height="16" viewBox="0 0 30 16" aria-hidden="true">
      {isWhole ? (
        <path d="M6 3H12A5 5 0 0 1 12 13H6A5 5 0 0 1 6 3ZM18 3H24A5 5 0 0 1 24 13H18A5 5 0 0 1 18 3Z" {...line} />
      ) : (
        <path d="M9 3H6A5 5 0 0 0 6 13H9M21 3H24A5 5 0 0 1 24 13H21M13 1L16 6L13 10L16 15" {...line} />
      )}
    </svg>
  )
}

const line = { stroke: 'currentColor', strokeWidth: 1.8, fill: 'none' } as const

/** A tick or a cross, with its word for who does not see it. */
export function CheckMark({ isGood }: { isGood: boolean }) {
  return (
    <svg width="16" height="16" viewBox="0 0 16 16" role="img" aria-label={isGood ? 'right:' : 'wrong:'}>
      <path d={isGood ? 'M2 8.5L6.2 13L14 3' : 'M3 3L13 13M13 3L3 13'} stroke="currentColor" strokeWidth="2.4" fill="none" />
    </svg>
  )
}
