import { FigureStepper } from './figure-stepper.tsx'
import { useKeptChoice } from './kept-choice.ts'
import { gapTyped, type GapUnit, gapUnits, millimetresOf } from './units-typed.ts'
import look from './pad.module.css'

interface Gaps {
  readonly gapLeft: number | null
  readonly gapRight: number | null
}

interface GapFieldsProps {
  /** In mm, whatever the rule they were read from. */
  gaps: Gaps
  /** Where the follower should stand by the record and the turns; shown with dashes. */
  guess: Gaps | null
  onChange: (change: Partial<Gaps>) => void
}

/** A whole tenth where the rule has tenths; a sixteenth, with what lies between two of them for a gap that was worked out. */
const fineness: Readonly<Record<GapUnit, { step: number; decimals: number }>> = {
  mm: { step: 0.1, decimals: 1 },
  '1/16 in': { step: 1, decimals: 2 },
}

/** Both gaps by the rule in the hand: the unit is a touch away, and stays chosen on this device. */
export function GapFields({ gaps, guess, onChange }: GapFieldsProps) {
  const [unit, chooseUnit] = useKeptChoice('gap-unit', gapUnits)
  const other = unit === 'mm' ? '1/16 in' : 'mm'
  return (
    <div className={look.gaps} role="group" aria-label="Gap now">
      <button
        type="button"
        className={look.unit}
        aria-label={`Gap in ${unit}: change to ${other}`}
        onClick={() => chooseUnit(other)}
      >
        Gap
        <small>{unit}</small>
      </button>
      <FigureStepper
        key={`left ${unit}`}
        label={`Gap left, ${unit}`}
        short="L"
        value={gapTyped(gaps.gapLeft, unit)}
        guess={gapTyped(guess?.gapLeft ?? null, unit)}
        {...fineness[unit]}
        onChange={(typed) => onChange({ gapLeft: millimetresOf(typed, unit) })}
      />
      <FigureStepper
        key={`right ${unit}`}
        label={`Gap right, ${unit}`}
        short="R"
        value={gapTyped(gaps.gapRight, unit)}
        guess={gapTyped(guess?.gapRight ?? null, unit)}
        {...fineness[unit]}
        onChange={(typed) => onChange({ gapRight: millimetresOf(typed, unit) })}
      />
    </div>
  )
}
