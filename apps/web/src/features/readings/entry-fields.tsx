import { LeakGrade, StemFeel } from '@glandkeeper/contract/events'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import { Suspense } from 'react'
import { keepsRegister, useMe } from '../people/index.tsx'
import { ChoiceRow } from './choice-row.tsx'
import { type DraftFieldsProps, type Kind, kinds, turnChoices, turnedOf } from './draft.ts'
import { GapFields } from './gap-fields.tsx'
import { LeakBefore, LeakFigures } from './leak-fields.tsx'
import { LeakActFields, MoreAboutLeak, PackingFields } from './later-fields.ts'
import { isSpent, leavesAfter } from './leaves.ts'
import { MissedFields } from './missed-fields.tsx'
import { OtherTurns } from './other-turns.tsx'
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
      {kind === 'leak seen' && (
        <>
          <LeakFigures draft={draft} onChange={onChange} />
          <Suspense>
            <MoreAboutLeak draft={draft} onChange={onChange} />
          </Suspense>
        </>
      )}
      {kind === 'could not do it' && <MissedFields draft={draft} onChange={onChange} />}
      {(kind === 'repacked' || kind === 'ring added') && (
        <Suspense>
          <PackingFields draft={draft} card={history} onChange={onChange} />
          <GapFields gaps={draft} guess={null} onChange={onChange} />
        </Suspense>
      )}
      {(kind === 'something else done about a leak' || kind === 'put the repair off') && (
        <Suspense>
          <LeakActFields draft={draft} onChange={onChange} />
        </Suspense>
      )}
      <KindChoice kind={kind} onChange={onChange} />
      <TimeAndNote draft={draft} onChange={onChange} />
    </>
  )
}

/** Below the fields of an ordinary visit: the rest is logged far less often. Who reports facts does not put repairs off. */
function KindChoice({ kind, onChange }: { kind: Kind; onChange: DraftFieldsProps['onChange'] }) {
  const mayPutOff = keepsRegister(useMe())
  const offered = kinds.filter((choice) => mayPutOff || choice !== 'put the repair off')
  return (
    <label className={look.kind}>
      <span>Entry</span>
      <select value={kind} onChange={({ target }) => onChange({ kind: target.value as Kind })}>
        {offered.map((choice) => (
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
      <GapFields gaps={draft} guess={after ?? (draft.turns === 'none' ? history.state : null)} onChange={onChange} />
      <ChoiceRow
        label="Turns"
        choices={isSpent(history.state) ? turnChoices.filter((choice) => choice === 'none' || choice === 'other') : turnChoices}
        value={draft.turns}
        onChange={(turns) => onChange({ turns })}
      />
      {draft.turns === 'other' && <OtherTurns draft={draft} onChange={onChange} />}
      <LeakBefore draft={draft} onChange={onChange} />
    </>
  )
}
