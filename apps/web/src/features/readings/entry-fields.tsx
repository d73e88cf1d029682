import { LeakGrade, StemFeel } from '@glandkeeper/contract/events'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import { ChoiceRow } from './choice-row.tsx'
import { type DraftFieldsProps, type Kind, kinds, turnChoices, turnedOf } from './draft.ts'
import { FigureStepper } from './figure-stepper.tsx'
import { isSpent, leavesAfter } from './leaves.ts'
import { MissedFields, RepackFields, RingFields } from './other-fields.tsx'
import { TimeAndNote } from './time-and-note.tsx'
import look from './pad.module.css'

export function EntryFields({ draft, history, onChange }: DraftFieldsProps & { history: ValveCard }) {
  const { kind } = draft
  return (
    <>
      {(kind === 'turns, gap, leak' || kind === 'leak seen') && (
        <ChoiceRow label="Leak" choices={LeakGrade.options} value={draft.leak} onChange={(leak) => onChange({ leak })} />
      )}
      {kind === 'turns, gap, leak' && <VisitFields draft={draft} history={history} onChange={onChange} />}
      {kind === 'leak seen' && draft.leak !== 'dry' && (
        <div className={look.gaps}>
          <span>Drops</span>
          <FigureStepper
            label="Drops a minute"
            short="/min"
            value={draft.dropsPerMinute}
            step={1}
            decimals={0}
            onChange={(dropsPerMinute) => onChange({ dropsPerMinute })}
          />
        </div>
      )}
      {kind === 'could not do it' && <MissedFields draft={draft} onChange={onChange} />}
      {kind === 'repacked' && <RepackFields draft={draft} onChange={onChange} />}
      {kind === 'ring added' && <RingFields draft={draft} onChange={onChange} />}
      {(kind === 'repacked' || kind === 'ring added') && <GapFields draft={draft} guess={null} onChange={onChange} />}
      <KindChoice kind={kind} onChange={onChange} />
      <TimeAndNote draft={draft} onChange={onChange} />
    </>
  )
}

/** Below the fields of an ordinary visit: a repack or a missed visit is logged far less often. */
function KindChoice({ kind, onChange }: { kind: Kind; onChange: DraftFieldsProps['onChange'] }) {
  return (
    <label className={look.kind}>
      <span>Entry</span>
      <select value={kind} onChange={({ target }) => onChange({ kind: target.value as Kind })}>
        {kinds.map((choice) => (
          <option key={choice}>{choice}</option>
        ))}
      </select>
    </label>
  )
}

function VisitFields({ draft, history, onChange }: DraftFieldsProps & { history: ValveCard }) {
  const after = leavesAfter(history, turnedOf(draft))
  return (
    <>
      <ChoiceRow label="Stem" choices={StemFeel.options} value={draft.stem} onChange={(stem) => onChange({ stem })} />
      <GapFields draft={draft} guess={after ?? (draft.turns === 'none' ? history.state : null)} onChange={onChange} />
      <ChoiceRow
        label="Turns"
        choices={isSpent(history.state) ? turnChoices.filter((choice) => choice === 'none' || choice === 'other') : turnChoices}
        value={draft.turns}
        onChange={(turns) => onChange({ turns })}
      />
      {draft.turns === 'other' && <OtherTurns draft={draft} onChange={onChange} />}
    </>
  )
}

interface GapFieldsProps extends DraftFieldsProps {
  /** Where the follower should stand by the record and the turns; shown with dashes. */
  guess: { readonly gapLeft: number | null; readonly gapRight: number | null } | null
}

function GapFields({ draft, guess, onChange }: GapFieldsProps) {
  return (
    <div className={look.gaps} role="group" aria-label="Gap now">
      <span>Gap</span>
      <FigureStepper
        label="Gap left, mm"
        short="L"
        value={draft.gapLeft}
        guess={guess?.gapLeft ?? null}
        step={0.1}
        onChange={(gapLeft) => onChange({ gapLeft })}
      />
      <FigureStepper
        label="Gap right, mm"
        short="R"
        value={draft.gapRight}
        guess={guess?.gapRight ?? null}
        step={0.1}
        onChange={(gapRight) => onChange({ gapRight })}
      />
    </div>
  )
}

function OtherTurns({ draft: { otherTurns }, onChange }: DraftFieldsProps) {
  const set = (side: 'left' | 'right') => (value: number | null) =>
    onChange({ otherTurns: { ...otherTurns, [side]: value ?? 0 } })
  return (
    <div className={look.gaps} role="group" aria-label="Turns of each side">
      <span>Sides</span>
      <FigureStepper
        label="Turns left"
        short="L"
        value={otherTurns.left}
        step={0.25}
        least={-10}
        decimals={2}
        onChange={set('left')}
      />
      <FigureStepper
        label="Turns right"
        short="R"
        value={otherTurns.right}
        step={0.25}
        least={-10}
        decimals={2}
        onChange={set('right')}
      />
    </div>
  )
}
