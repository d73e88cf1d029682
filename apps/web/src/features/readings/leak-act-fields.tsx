import { DeferReason, LeakGrade, Treatment } from '@glandkeeper/contract/events'
import { ChoiceRow } from './choice-row.tsx'
import type { DraftFieldsProps } from './draft.ts'
import look from './pad.module.css'

/** What was done about a leak beside nuts and packing, or who allowed that it waits. */
export function LeakActFields(props: DraftFieldsProps) {
  return props.draft.kind === 'put the repair off' ? <DeferredFields {...props} /> : <TreatedFields {...props} />
}

function TreatedFields({ draft, onChange }: DraftFieldsProps) {
  return (
    <>
      <WordSelect
        label="Done"
        words={Treatment.options}
        value={draft.treatment}
        onChange={(treatment) => onChange({ treatment })}
      />
      <ChoiceRow
        label="Before"
        choices={LeakGrade.options}
        value={draft.leakBefore}
        onChange={(leakBefore) => onChange({ leakBefore })}
      />
      <ChoiceRow
        label="After"
        choices={LeakGrade.options}
        value={draft.leakAfter}
        onChange={(leakAfter) => onChange({ leakAfter })}
      />
    </>
  )
}

function DeferredFields({ draft, onChange }: DraftFieldsProps) {
  return (
    <>
      <WordSelect
        label="Why"
        words={DeferReason.options}
        value={draft.deferReason}
        onChange={(deferReason) => onChange({ deferReason })}
      />
      <div className={look.more}>
        <label>
          <span>Allowed by</span>
          <input
            type="text"
            maxLength={60}
            autoComplete="off"
            value={draft.approvedBy}
            onChange={({ target }) => onChange({ approvedBy: target.value })}
          />
        </label>
        <label>
          <span>Until, empty while no day is set</span>
          <input type="date" value={draft.until} onChange={({ target }) => onChange({ until: target.value })} />
        </label>
      </div>
    </>
  )
}

interface WordSelectProps<Word extends string> {
  label: string
  words: readonly Word[]
  value: Word | null
  onChange: (word: Word | null) => void
}

function WordSelect<Word extends string>({ label, words, value, onChange }: WordSelectProps<Word>) {
  return (
    <label className={look.kind}>
      <span>{label}</span>
      <select value={value ?? ''} onChange={({ target }) => onChange(words.find((word) => word === target.value) ?? null)}>
        <option value="">choose</option>
        {words.map((word) => (
          <option key={word}>{word}</option>
        ))}
      </select>
    </label>
  )
}
