import type { ClockShape } from './clock-words.ts'

/** Ticked ring: done; with a bar under it: late. Hands: it runs. Filled wedge: over. Dashed ring: put off; dashed wedge: past that day too. */
export function ClockMark({ shape, word }: { shape: ClockShape; word: string }) {
  const isHot = shape === 'overdue' || shape === 'put off, past its day'
  return (
    <span className={isHot ? 'standing book' : 'standing'}>
      <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
        {(shape === 'met' || shape === 'met late') && (
          <path d={`${ring(shape === 'met' ? 8 : 6.6, 5.6)}M5 ${shape === 'met' ? 8 : 6.6}l2.2 2.3l3.8 -4.6`} className="out" />
        )}
        {shape === 'met late' && <path d="M2 15h12" className="out" />}
        {shape === 'due' && <path d={`${ring(8, 6.4)}M8 4v4h3`} className="out" />}
        {shape === 'overdue' && <path d="M8 1.5L15 14.5H1Z" className="hotfill" />}
        {shape === 'put off' && <path d={ring(8, 6.4)} className="out dashed" />}
        {shape === 'put off, past its day' && <path d="M8 1.5L15 14.5H1Z" className="hotline dashed" />}
      </svg>
      {word}
    </span>
  )
}

const ring = (y: number, radius: number) =>
  `M${8 - radius} ${y}a${radius} ${radius} 0 1 0 ${radius * 2} 0a${radius} ${radius} 0 1 0 ${-radius * 2} 0`
