import type { StockItem } from '@glandkeeper/contract/stores'
import type { Kit } from '@glandkeeper/contract/kits'
import { formatISO } from 'date-fns'
import { useState } from 'react'
import { newId } from '../../platform/ids.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { formatAmount } from './amount-words.ts'
import { issuedMovements, lotsToIssue, type LotToIssue } from './kit-issue.ts'
import { type KitAsked, type MovementInput, useMoveStock } from './queries.ts'
import css from './kit.module.css'

interface Asked {
  readonly lots: readonly LotToIssue[]
  /** Made once: sent again after a cut they double nothing. */
  readonly movements: readonly MovementInput[]
}

/** Says what goes out, reel by reel, and asks once. */
export function IssueKit({ kit, asked, items }: { kit: Kit; asked: KitAsked; items: readonly StockItem[] }) {
  const move = useMoveStock()
  const [question, setQuestion] = useState<Asked | null>(null)
  const lots = lotsToIssue(kit, items, asked)
  const ask = () => {
    move.reset()
    const stamp = { takenAt: formatISO(new Date()), newId, note: kit.title.slice(0, 200) }
    setQuestion({ lots, movements: issuedMovements(lots, stamp) })
  }
  if (question === null) {
    return (
      <div className={`${page.acts} ${css.acts}`}>
        <button type="button" className="main" disabled={lots.length === 0} onClick={ask}>
          Issue this kit
        </button>
        <span className="soft" role="status">
          {move.isSuccess ? 'Issued. ' : ''}
          {lots.length === 0 ? 'Nothing of it is still to go out, or none of it is in the store.' : ''}
        </span>
      </div>
    )
  }
  return (
    <section className={css.issue} aria-label="Issue this kit">
      <p>
        <b>This goes out of the store.</b> Of a reel: what is cut off it, with an end that is scrap. The rest stays on the books.
      </p>
      <ul>
        {question.lots.map(({ lotId, tag, label, name, amount, unit }) => (
          <li key={`${lotId} ${tag}`}>
            <span className="let">{formatAmount(amount, unit)}</span> of <span className="let">{label}</span>, {name}
            {tag !== null && asked.roundId !== undefined && `, for ${tag}`}
          </li>
        ))}
      </ul>
      <div className={page.acts}>
        <button
          type="button"
          className="main"
          disabled={move.isPending}
          onClick={() => move.mutate(question.movements, { onSuccess: () => setQuestion(null) })}
        >
          Put it down as issued
        </button>
        <button type="button" onClick={() => setQuestion(null)}>
          Not now
        </button>
      </div>
      {move.error && <ProblemNote error={move.error} />}
    </section>
  )
}
