import { useState } from 'react'
import { ChoiceRow } from './choice-row.tsx'
import type { DraftFieldsProps } from './draft.ts'
import { FigureStepper } from './figure-stepper.tsx'
import { useKeptChoice } from './kept-choice.ts'
import { turnsOf, turnsTyped, turnUnits } from './units-typed.ts'
import look from './pad.module.css'

const nutChoices = ['both alike', 'each nut'] as const
/** Ten turns either way, in sixths: what the record takes. */
const LEAST = -60

/** Any other number of turns, counted as a spanner counts them. */
export function OtherTurns({ draft: { otherTurns }, onChange }: DraftFieldsProps) {
  const [unit, chooseUnit] = useKeptChoice('turn-unit', turnUnits)
  const [isEach, setIsEach] = useState(otherTurns.left !== otherTurns.right)
  const set = (turns: Partial<typeof otherTurns>) => onChange({ otherTurns: { ...otherTurns, ...turns } })
  const chooseNuts = (choice: (typeof nutChoices)[number]) => {
    setIsEach(choice === 'each nut')
    if (choice === 'both alike') set({ right: otherTurns.left })
  }
  const stepper = { step: 1, least: LEAST, decimals: 2 }
  const typed = (value: number | null) => turnsOf(value ?? 0, unit)
  const word = unit === 'flats' ? 'Flats' : 'Quarter turns'
  return (
    <>
      <ChoiceRow label="In" choices={turnUnits} value={unit} onChange={chooseUnit} />
      <ChoiceRow label="Nuts" choices={nutChoices} value={isEach ? 'each nut' : 'both alike'} onChange={chooseNuts} />
      <div className={look.gaps} role="group" aria-label={isEach ? 'Turns of each nut' : 'Turns of both nuts'} key={unit}>
        <span>{isEach ? 'Each' : 'Both'}</span>
        {isEach ? (
          <>
            <FigureStepper
              {...stepper}
              label={`${word} left`}
              short="L"
              value={turnsTyped(otherTurns.left, unit)}
              onChange={(value) => set({ left: typed(value) })}
            />
            <FigureStepper
              {...stepper}
              label={`${word} right`}
              short="R"
              value={turnsTyped(otherTurns.right, unit)}
              onChange={(value) => set({ right: typed(value) })}
            />
          </>
        ) : (
          <FigureStepper
            {...stepper}
            label={`${word}, both nuts`}
            short={unit === 'flats' ? '/6' : '/4'}
            value={turnsTyped(otherTurns.left, unit)}
            onChange={(value) => set({ left: typed(value), right: typed(value) })}
          />
        )}
      </div>
    </>
  )
}
