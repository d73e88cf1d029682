import type { FieldEvent } from '@glandkeeper/contract/events'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import { useState } from 'react'
import { useMe } from '../people/index.tsx'
import type { PreparedPhoto } from '../photos/index.tsx'
import { AskAgain } from './ask-again.tsx'
import { entriesOf } from './commands.ts'
import { type Draft, emptyDraft, factsOf, missingIn, noteOf } from './draft.ts'
import { questionsBefore, savedInWords } from './draft-words.ts'
import { EntryFields } from './entry-fields.tsx'
import { Faults } from './faults.tsx'
import { keepMeter, keptMeter } from './kept-meter.ts'
import { useLaterFields } from './later-fields.ts'
import { offersHalfTurn } from './leaves.ts'
import { MainButton } from './main-button.tsx'
import { NotSaved } from './not-saved.tsx'
import { findingsOnTheSpot, type SpotFinding } from './on-the-spot.ts'
import { PhotoField } from './photo-field.tsx'
import { useSave } from './save.ts'
import { Saved } from './saved.tsx'
import look from './pad.module.css'

/** Entries as they will be saved, with the words for them: made once, at the press. */
interface Made {
  readonly entries: readonly FieldEvent[]
  readonly says: string
  readonly findings: readonly SpotFinding[]
}

type Step =
  | { readonly is: 'typing'; readonly faults: readonly string[] }
  | { readonly is: 'asking'; readonly made: Made; readonly questions: readonly string[] }
  | { readonly is: 'made'; readonly made: Made }

const typing: Step = { is: 'typing', faults: [] }

interface EntryFormProps {
  /** As it stands with what waits on this device. */
  card: ValveCard
  roundId: string | null
}

/** Half a turn where there is travel for it; with the meter of the last reading, and the name of who is signed in. */
function blankFor(card: ValveCard, approvedBy: string): Draft {
  const said = { ...emptyDraft, ...keptMeter(), approvedBy }
  return offersHalfTurn(card) ? said : { ...said, turns: 'none', otherTurns: { left: 0, right: 0 } }
}

/** One entry from a blank page to the disk of this device; the outbox brings it to the register. */
export function EntryForm({ card, roundId }: EntryFormProps) {
  useLaterFields()
  const { name } = useMe()
  const [draft, setDraft] = useState(() => blankFor(card, name))
  const [step, setStep] = useState(typing)
  const [photos, setPhotos] = useState<readonly PreparedPhoto[]>([])
  const saving = useSave(card.valve.tag)

  const save = (made: Made) => {
    setStep({ is: 'made', made })
    if (draft.screeningValue !== null) keepMeter(draft)
    void saving.save(made.entries, made.says, photos)
  }
  const press = () => {
    const missing = missingIn(draft)
    if (missing !== null) return setStep({ is: 'typing', faults: [missing] })
    const at = draft.takenAt === null ? new Date() : new Date(draft.takenAt)
    if (Number.isNaN(at.getTime())) return setStep({ is: 'typing', faults: ['Give the date and the time in full.'] })
    const digests = photos.map(({ digest }) => digest)
    const built = entriesOf(
      { valveId: card.valve.valveId, at, takenBy: draft.takenBy, note: noteOf(draft), photos: digests },
      factsOf(draft),
    )
    if (!built.ok) return setStep({ is: 'typing', faults: built.faults })
    const made = { entries: built.entries, says: savedInWords(draft, card), findings: findingsOnTheSpot(draft, card) }
    const questions = questionsBefore(draft, built.entries, card)
    return questions.length > 0 ? setStep({ is: 'asking', made, questions }) : save(made)
  }
  const change = (fields: Partial<Draft>) => {
    setDraft({ ...draft, ...fields })
    setStep(typing)
  }
  const startAnew = () => {
    saving.startAnew()
    setPhotos([])
    setDraft(blankFor(card, name))
    setStep(typing)
  }

  const isSaved = step.is === 'made' && saving.state === 'saved'
  return (
    <form
      className={isSaved ? `${look.pad} ${look.done}` : look.pad}
      onSubmit={(event) => event.preventDefault()}
      aria-label="What was done"
    >
      {!isSaved && (
        <div className={look.fields} inert={step.is !== 'typing'}>
          <EntryFields draft={draft} history={card} onChange={change} />
          <PhotoField photos={photos} onChange={setPhotos} />
        </div>
      )}
      <div className={look.foot}>
        {step.is === 'typing' && <Faults faults={step.faults} />}
        {step.is === 'typing' && <MainButton draft={draft} history={card} onPress={press} />}
        {step.is === 'asking' && (
          <AskAgain questions={step.questions} onYes={() => save(step.made)} onNo={() => setStep(typing)} />
        )}
        {step.is === 'made' && saving.state === 'saving' && <p role="status">Saving on this device</p>}
        {step.is === 'made' && saving.fault !== null && <NotSaved fault={saving.fault} onAgain={() => save(step.made)} />}
        {isSaved && <Saved {...step.made} valve={card.valve} roundId={roundId} onAnew={startAnew} />}
      </div>
    </form>
  )
}
