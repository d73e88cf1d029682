import { LeakGrade } from '@glandkeeper/contract/events'
import { Suspense, useState } from 'react'
import { ChoiceRow } from './choice-row.tsx'
import { type Draft, type DraftFieldsProps, isTurned, measuredLeak } from './draft.ts'
import { FigureStepper } from './figure-stepper.tsx'
import { MoreAboutLeak } from './later-fields.ts'
import look from './pad.module.css'

/** Drops of a leak that is seen, and what an instrument says, seen or not. */
export function LeakFigures({ draft, onChange }: DraftFieldsProps) {
  return (
    <div className={look.gaps} role="group" aria-label="Leak in figures">
      <span>Rate</span>
      {measuredLeak(draft) !== 'dry' && (
        <FigureStepper
          label="Drops a minute"
          short="drops"
          value={draft.dropsPerMinute}
          step={1}
          decimals={0}
          onChange={(dropsPerMinute) => onChange({ dropsPerMinute })}
        />
      )}
      <FigureStepper
        label="Screening value, ppmv"
        short="ppmv"
        value={draft.screeningValue}
        step={50}
        decimals={0}
        onChange={(screeningValue) => onChange({ screeningValue })}
      />
    </div>
  )
}

/** What the leak was before the nuts were touched, and its figures. Closed until it is wanted: most visits are without. */
export function LeakBefore({ draft, onChange }: DraftFieldsProps) {
  const [isOpen, setIsOpen] = useState(false)
  return (
    <details className={look.aside} onToggle={({ currentTarget }) => setIsOpen(currentTarget.open)}>
      <summary>{leakInWords(draft)}</summary>
      {isTurned(draft) && (
        <ChoiceRow
          label="Before"
          choices={LeakGrade.options}
          value={draft.leakBefore}
          onChange={(leakBefore) => onChange({ leakBefore })}
        />
      )}
      <LeakFigures draft={draft} onChange={onChange} />
      {isOpen && (
        <Suspense>
          <MoreAboutLeak draft={draft} onChange={onChange} />
        </Suspense>
      )}
    </details>
  )
}

/** What is set stays in sight when the fields are folded away. */
function leakInWords(draft: Draft): string {
  const leak = measuredLeak(draft)
  const said = [
    isTurned(draft) && leak !== null && leak,
    leak !== 'dry' && draft.dropsPerMinute !== null && `${draft.dropsPerMinute} drops a minute`,
    draft.screeningValue !== null && `${draft.screeningValue} ppmv`,
  ].filter((part) => part !== false)
  if (isTurned(draft)) return said.length > 0 ? `Leak before: ${said.join(', ')}` : 'Leak before, in figures'
  return said.length > 0 ? `Leak: ${said.join(', ')}` : 'Leak in figures'
}
