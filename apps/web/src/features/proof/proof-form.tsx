import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { FieldEvent } from '@glandkeeper/contract/events'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import { useEffect, useState } from 'react'
import { AskAgain, entriesOf, NotSaved, Saved, unusualInWords, useSave } from '../readings/index.ts'
import { Afterwards } from './afterwards.tsx'
import { AllSteps } from './all-steps.tsx'
import { gapVerdict } from './gap-verdict.ts'
import { NextButton } from './next-button.tsx'
import { planOf } from './plan.ts'
import { keepDraft, keptDraft, newDraft, type ProofDraft } from './proof-draft.ts'
import { noteOf, repackInWords, repackOf } from './repack-entry.ts'
import { leftOut } from './steps.ts'
import look from './proof.module.css'

interface ProofFormProps {
  valve: ValveCard
  /** Null where none is known on this device: the steps are done all the same. */
  card: CutCard | null
}

interface Made {
  readonly entries: readonly FieldEvent[]
  readonly says: string
}

type Stage =
  | { readonly is: 'doing'; readonly faults: readonly string[] }
  | { readonly is: 'asking'; readonly made: Made; readonly questions: readonly string[] }
  | { readonly is: 'made'; readonly made: Made }

const doing: Stage = { is: 'doing', faults: [] }

/** Kept on this device at every tick, until the entry is on its disk. */
export function ProofForm({ valve, card }: ProofFormProps) {
  const { valveId, tag } = valve.valve
  const [draft, setDraft] = useState(() => keptDraft(valveId) ?? newDraft(new Date()))
  const [stage, setStage] = useState(doing)
  const saving = useSave(tag)
  const plan = planOf(card, draft)
  const { gland } = valve.valve
  const ringsMore = plan.rings === null ? 0 : plan.rings - (card?.rings?.count ?? plan.rings)
  const verdict = gapVerdict({ gland, gap: card?.gap ?? null, section: plan.section, ringsMore }, draft)
  useEffect(() => {
    if (saving.state === 'saved') keepDraft(valveId, null)
  }, [saving.state, valveId])

  const change = (fields: Partial<ProofDraft>) => {
    const next = { ...draft, ...fields }
    setDraft(next)
    keepDraft(valveId, next)
    setStage(doing)
  }
  const startAnew = () => {
    saving.startAnew()
    keepDraft(valveId, null)
    setDraft(newDraft(new Date()))
    setStage(doing)
  }
  const save = async (made: Made) => {
    setStage({ is: 'made', made })
    await saving.save(made.entries, made.says)
  }
  const press = () => {
    const built = entriesOf({ valveId, at: new Date(), takenBy: '', note: noteOf(draft) }, [repackOf(draft, plan)])
    if (!built.ok) return setStage({ is: 'doing', faults: built.faults })
    const made = { entries: built.entries, says: repackInWords(draft) }
    const questions = [...leftOut(draft, plan), ...unusualInWords(built.entries)]
    if (questions.length > 0) setStage({ is: 'asking', made, questions })
    else void save(made)
  }

  if (stage.is === 'made' && saving.state === 'saved')
    return (
      <div className={look.foot}>
        <Saved {...stage.made} findings={[]} valve={valve.valve} roundId={null} onAnew={startAnew} />
        <Afterwards card={card} state={valve.state} entries={stage.made.entries} />
      </div>
    )
  return (
    <form className={look.form} onSubmit={(event) => event.preventDefault()} aria-label="Proof after a repack">
      <div inert={stage.is !== 'doing'} className={look.steps}>
        <AllSteps draft={draft} plan={plan} card={card} gland={gland} verdict={verdict} onChange={change} onAnew={startAnew} />
      </div>
      <div className={look.foot}>
        {stage.is === 'doing' && (
          <NextButton draft={draft} plan={plan} verdict={verdict} onChange={change} onSave={press} faults={stage.faults} />
        )}
        {stage.is === 'asking' && (
          <AskAgain questions={stage.questions} onYes={() => void save(stage.made)} onNo={() => setStage(doing)} />
        )}
        {stage.is === 'made' && saving.fault !== null && <NotSaved fault={saving.fault} onAgain={() => void save(stage.made)} />}
      </div>
    </form>
  )
}
