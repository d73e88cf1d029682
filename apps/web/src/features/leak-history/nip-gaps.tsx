const WIDTH = 252
const LEFT = 4
const TICK = 16
const PX_PER_LETTER = 7

/** Nips as upright ticks, as far apart as they were in days; the days are in the words beside it. */
export function NipGaps({ days }: { days: readonly number[] }) {
  const total = days.reduce((sum, each) => sum + each, 0)
  if (!(total > 0)) return null
  const x = (day: number) => LEFT + (day / total) * (WIDTH - LEFT * 2)
  const gaps = days.map((each, place) => {
    const before = days.slice(0, place).reduce((sum, one) => sum + one, 0)
    return { from: x(before), to: x(before + each), says: String(Math.round(each)) }
  })
  return (
    <svg width={WIDTH} height="40" viewBox={`0 0 ${WIDTH} 40`} aria-hidden="true">
      <path d={`M${LEFT} ${TICK + 4}H${WIDTH - LEFT}`} className="hair" />
      <path
        d={[LEFT, ...gaps.map(({ to }) => to)].map((tick) => `M${tick.toFixed(1)} ${TICK + 4}v${-TICK}`).join('')}
        className="out"
      />
      {gaps.map(({ from, to, says }) =>
        to - from > says.length * PX_PER_LETTER + 2 ? (
          <text key={from} x={(from + to) / 2} y={TICK + 19} textAnchor="middle">
            {says}
          </text>
        ) : null,
      )}
    </svg>
  )
}
