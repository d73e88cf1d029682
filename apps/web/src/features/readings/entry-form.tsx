import type { FieldEvent } from '@glandkeeper/contract/events'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import { useState } from 'react'
import { ProblemError } from '../../platform/client.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { AskAgain } from './ask-again.tsx'
import { entriesOf } from './commands.ts'
import { useDelivery } from './delivery.ts'
import { type Draft, emptyDraft, factsOf, missingIn, noteOf } from './draft.ts'
import { questionsBefore, savedInWords } from './draft-words.ts'
import { EntryFields } from './entry-fields.tsx'
import { offersHalfTurn } from './leaves.ts'
import { MainButton } from './main-button.tsx'
import { NotSent } from './not-sent.tsx'
import { Saved } from './saved.tsx'
import look from './pad.module.css'

type Step =
  | { readonly is: 'typing'; readonly faults: readonly string[] }
  | { readonly is: 'asking'; readonly entries: readonly FieldEvent[]; readonly questions: readonly string[] }
  | { readonly is: 'sent'; readonly entries: readonly FieldEvent[]; readonly says: string }

const typing: Step = { is: 'typing', faults: [] }

/** One entry from a blank page to its place in the record. Entries are made once, at the press; sending may repeat. */
export function EntryForm({ history }: { history: ValveHistory }) {
  const blank: Draft = offersHalfTurn(history) ? emptyDraft : { ...emptyDraft, turns: 'none', otherTurns: { left: 0, right: 0 } }
  const [draft, setDraft] = useState(blank)
  const [step, setStep] = useState(typing)
  const delivery = useDelivery(history.valve.tag)

  const send = (entries: readonly FieldEvent[]) => {
    setStep({ is: 'sent', entries, says: savedInWords(draft, history) })
    delivery.mutate(entries, { onSuccess: ({ kept }) => kept.length === 0 && setStep(typing) })
  }
  const press = () => {
    const missing = missingIn(draft)
    if (missing !== null) return setStep({ is: 'typing', faults: [missing] })
    const at = draft.takenAt === null ? new Date() : new Date(draft.takenAt)
    if (Number.isNaN(at.getTime())) return setStep({ is: 'typing', faults: ['Give the date and the time in full.'] })
    const built = entriesOf({ valveId: history.valve.valveId, at, takenBy: draft.takenBy, note: noteOf(draft) }, factsOf(draft))
    if (!built.ok) return setStep({ is: 'typing', faults: built.faults })
    const questions = questionsBefore(draft, built.entries, history)
    return questions.length > 0 ? setStep({ is: 'asking', entries: built.entries, questions }) : send(built.entries)
  }
  const change = (fields: Partial<Draft>) => {
    setDraft({ ...draft, ...fields })
    setStep(typing)
    if (delivery.data) delivery.reset()
  }
  const startAnew = () => {
    delivery.reset()
    setDraft(blank)
    setStep(typing)
  }

  const isSaved = step.is === 'sent' && delivery.isSuccess
  return (
    <form
      className={isSaved ? `${look.pad} ${look.done}` : look.pad}
      onSubmit={(event) => event.preventDefault()}
      aria-label="What was done"
    >
      {!isSaved && (
        <div className={look.fields} inert={step.is !== 'typing'}>
          <EntryFields draft={draft} history={history} onChange={change} />
        </div>
      )}
      <div className={look.foot}>
        {step.is === 'typing' && <Faults faults={step.faults} />}
        {step.is === 'typing' &&
          delivery.data?.refused.map((problem) => (
            <ProblemNote key={problem.code + problem.detail} error={new ProblemError(problem)} />
          ))}
        {step.is === 'typing' && <MainButton draft={draft} history={history} onPress={press} />}
        {step.is === 'asking' && (
          <AskAgain questions={step.questions} onYes={() => send(step.entries)} onNo={() => setStep(typing)} />
        )}
        {step.is === 'sent' && delivery.isPending && <p role="status">Sending</p>}
        {step.is === 'sent' && delivery.isError && <NotSent error={delivery.error} onAgain={() => send(step.entries)} />}
        {isSaved && <Saved says={step.says} delivery={delivery.data} tag={history.valve.tag} onAnew={startAnew} />}
      </div>
    </form>
  )
}

function Faults({ faults }: { faults: readonly string[] }) {
  if (faults.length === 0) return null
  return (
    <div role="alert" className={look.note}>
      {faults.map((fault) => (
        <p key={fault}>{fault}</p>
      ))}
    </div>
  )
}
