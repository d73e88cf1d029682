import { DutyState, StemPosition } from '@glandkeeper/contract/events'
import { ChoiceRow } from './choice-row.tsx'
import { type DraftFieldsProps, measuredLeak } from './draft.ts'
import { FigureStepper } from './figure-stepper.tsx'
import look from './pad.module.css'

/** What the eye saw, what the meter was, and how valve and line stood. */
export function SightingFields({ draft, onChange }: DraftFieldsProps) {
  return (
    <div className={look.further}>
      {measuredLeak(draft) !== 'dry' && <ByEye draft={draft} onChange={onChange} />}
      <ChoiceRow
        label="Valve"
        choices={StemPosition.options}
        value={draft.stemPosition}
        onChange={(stemPosition) => onChange({ stemPosition })}
      />
      <ChoiceRow label="Line" choices={DutyState.options} value={draft.duty} onChange={(duty) => onChange({ duty })} />
      <OfMeter draft={draft} onChange={onChange} />
    </div>
  )
}

function ByEye({ draft, onChange }: DraftFieldsProps) {
  return (
    <div className={look.gaps} role="group" aria-label="By eye">
      <span>By eye</span>
      <FigureStepper label="Plume, m" short="m plume" value={draft.plume} step={0.1} onChange={(plume) => onChange({ plume })} />
      <FigureStepper
        label="As through a hole of, mm"
        short="ø mm"
        value={draft.opening}
        step={0.5}
        onChange={(opening) => onChange({ opening })}
      />
    </div>
  )
}

/** Kept with the reading of the meter only: without one nothing of this is sent. */
function OfMeter({ draft, onChange }: DraftFieldsProps) {
  return (
    <>
      <div className={`${look.gaps} ${look.meter}`} role="group" aria-label="Meter">
        <span>Meter</span>
        <FigureStepper
          label="Background, ppmv"
          short="background"
          value={draft.background}
          step={1}
          decimals={0}
          onChange={(background) => onChange({ background })}
        />
        <label className={look.tick}>
          <input type="checkbox" checked={draft.isPegged} onChange={({ target }) => onChange({ isPegged: target.checked })} />
          at its end
        </label>
      </div>
      <div className={look.more}>
        <label>
          <span>Instrument</span>
          <input
            type="text"
            maxLength={60}
            autoComplete="off"
            value={draft.instrument}
            onChange={({ target }) => onChange({ instrument: target.value })}
          />
        </label>
        <label>
          <span>Calibrated on</span>
          <input type="date" value={draft.calibratedOn} onChange={({ target }) => onChange({ calibratedOn: target.value })} />
        </label>
      </div>
    </>
  )
}
