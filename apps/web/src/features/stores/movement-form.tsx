import { faultsOf, type Fault } from '@glandkeeper/contract/problem'
import { moveStock, type StockItem } from '@glandkeeper/contract/stores'
import { useState, type SubmitEvent } from 'react'
import { newId } from '../../platform/ids.ts'
import { faultsTold } from '../../ui/fault-beside.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { capital } from '../../ui/sentence.ts'
import { lotsWord } from './amount-words.ts'
import { manyFault, type MovementAct, movementActs, type MovementDraft, movementDraftFor, movementsOf } from './movement-draft.ts'
import { MovementFields } from './movement-fields.tsx'
import { type MovementInput, useMoveStock } from './queries.ts'
import css from './stores.module.css'

/** The acts on an item side by side; the form of the one that was pressed below them. */
export function MoveStock({ item }: { item: StockItem }) {
  const [act, setAct] = useState<MovementAct | null>(null)
  const needsLot = (each: MovementAct) => each !== 'order' && each !== 'receive' && item.lots.length === 0
  return (
    <section className={css.section} aria-label="Put down what happened">
      <div className={css.choices}>
        {movementActs.map((each) => (
          <button
            key={each}
            type="button"
            aria-expanded={act === each}
            disabled={needsLot(each)}
            onClick={() => setAct(act === each ? null : each)}
          >
            {capital(each)}
          </button>
        ))}
      </div>
      {act && <MovementForm key={act} act={act} item={item} onDone={() => setAct(null)} />}
    </section>
  )
}

const saved: Readonly<Record<MovementAct, string>> = {
  order: 'Put the order down',
  receive: 'Put it in the store',
  issue: 'Issue it',
  return: 'Take it back into the store',
  count: 'Put the count down',
}

interface MovementFormProps {
  act: MovementAct
  item: StockItem
  onDone: () => void
}

interface Made {
  readonly draft: MovementDraft
  readonly movements: readonly MovementInput[]
}

function MovementForm({ act, item, onDone }: MovementFormProps) {
  const [draft, setDraft] = useState(() => ({
    ...movementDraftFor(item),
    ...((act === 'issue' || act === 'return' || act === 'count') && { amount: '' }),
  }))
  const [found, setFound] = useState<readonly Fault[]>([])
  // The same movements are sent again after a cut: their ids say that they are.
  const [made, setMade] = useState<Made | null>(null)
  const move = useMoveStock()
  const told = atField(faultsTold(move.error, found))
  const isTried = made !== null
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    move.reset()
    const movements =
      made?.draft === draft ? made.movements : movementsOf(act, draft, { itemId: item.itemId, now: new Date(), newId })
    setMade({ draft, movements })
    const checked = moveStock.body.safeParse({ movements })
    setFound(checked.success ? [] : faultsOf(checked.error))
    if (!checked.success || (act === 'receive' && manyFault(draft.many) !== null)) return
    move.mutate(movements, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={`${capital(act)} ${item.name}`}>
      <div className={css.fields}>
        <MovementFields
          act={act}
          item={item}
          draft={draft}
          told={told}
          isTried={isTried}
          onChange={(change) => setDraft({ ...draft, ...change })}
        />
      </div>
      {act === 'count' && <p className="soft">The books follow what you counted, from when you counted it.</p>}
      {act === 'receive' && <p className="soft">Each of the {lotsWord(item.kind)} is kept by itself, with its batch.</p>}
      {move.error && <ProblemNote error={move.error} />}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={move.isPending}>
          {saved[act]}
        </button>
        <button type="button" onClick={onDone}>
          Leave it
        </button>
      </div>
    </form>
  )
}

/** Beside its field, whichever of several movements it is of: they are alike but for their labels. */
function atField(faults: readonly Fault[]): Fault[] {
  return faults.map((fault) => ({ ...fault, pointer: fault.pointer.replace(/^#\/movements\/\d+\//, '#/') }))
}
