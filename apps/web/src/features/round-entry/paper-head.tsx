import type { Round } from '@glandkeeper/contract/rounds'
import { Link } from 'react-router'
import { formatDay } from '../../platform/site-time.ts'
import { type GapUnit, gapUnits } from '../readings/index.ts'
import type { TypedRound } from './typed-round.ts'
import look from './round-entry.module.css'

interface PaperHeadProps {
  round: Round
  typed: TypedRound
  gapUnit: GapUnit
  onGapUnit: (unit: GapUnit) => void
  onAbout: (about: Partial<Pick<TypedRound, 'day' | 'takenBy'>>) => void
}

/** What holds for the whole paper: the day, who walked, and what gaps were read in. */
export function PaperHead({ round, typed, gapUnit, onGapUnit, onAbout }: PaperHeadProps) {
  return (
    <header className={look.head}>
      <h1>{round.name}</h1>
      <p className="soft">
        {formatDay(round.walkOn)} · {round.fitterName ?? 'whoever has time'} ·{' '}
        <Link to={`/rounds/${round.roundId}`}>back to the round</Link>
      </p>
      <div className={look.about}>
        <label>
          Walked on
          <input type="date" value={typed.day} onChange={({ target }) => onAbout({ day: target.value })} />
        </label>
        <label>
          Walked by, if not by you
          <input
            type="text"
            maxLength={60}
            autoComplete="off"
            value={typed.takenBy}
            onChange={({ target }) => onAbout({ takenBy: target.value })}
          />
        </label>
        <label>
          Gaps in
          <select value={gapUnit} onChange={({ target }) => onGapUnit(gapUnits.find((unit) => unit === target.value) ?? 'mm')}>
            {gapUnits.map((unit) => (
              <option key={unit}>{unit}</option>
            ))}
          </select>
        </label>
      </div>
      <p className={look.keys}>
        Enter or down: the next row. Tab: the next cell. Words by their first letters, or by left and right. Turns as 1/2, 0.5, 3f
        for flats. Empty time: noon of the day. Ctrl and Enter saves.
      </p>
    </header>
  )
}
