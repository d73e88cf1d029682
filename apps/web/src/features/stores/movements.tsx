import type { StockItem, StockMovementShown } from '@glandkeeper/contract/stores'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { newId } from '../../platform/ids.ts'
import { formatMoment } from '../../platform/site-time.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useMe } from '../people/index.tsx'
import { formatAmount } from './amount-words.ts'
import { takenBack } from './movement-draft.ts'
import { movementsOfItem, useMoveStock } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import css from './stores.module.css'

const FIRST_SHOWN = 15

/** Everything that ever happened to an item, the newest first; what was taken back stays, struck through. */
export function Movements({ item }: { item: StockItem }) {
  const known = useQuery(movementsOfItem(item.itemId))
  const [showsAll, setShowsAll] = useState(false)
  const movements = known.data?.movements ?? []
  const shown = showsAll ? movements : movements.slice(0, FIRST_SHOWN)
  return (
    <section className={css.section} aria-labelledby="movements">
      <h2 id="movements">What happened</h2>
      {!known.data && <Reading query={known} things="movements" />}
      {known.data && movements.length === 0 && <p className="soft">Nothing came or went yet.</p>}
      <ol className={css.moves}>
        {shown.map((movement) => (
          <Movement key={movement.movementId} movement={movement} item={item} />
        ))}
      </ol>
      {shown.length < movements.length && (
        <button type="button" onClick={() => setShowsAll(true)}>
          Show all {movements.length}
        </button>
      )}
    </section>
  )
}

function Movement({ movement, item }: { movement: StockMovementShown; item: StockItem }) {
  const { timeZone } = useMe().site
  const { kind, takenAt, by, label, change, says, isTakenBack } = movement
  const said = [label, says].filter(Boolean).join(' · ')
  return (
    <li>
      <time dateTime={takenAt}>{formatMoment(takenAt, timeZone)}</time>
      <span className={css.change}>{change === 0 ? '' : `${change > 0 ? '+' : ''}${formatAmount(change, item.unit)}`}</span>
      <span className={css.what}>
        {isTakenBack ? (
          <>
            <s className={css.struck}>{said}</s> <b>taken back</b>
          </>
        ) : (
          said
        )}{' '}
        <span className="soft">{by}</span>
      </span>
      {!isTakenBack && kind !== 'taken back' && kind !== 'used' && <TakeBack movement={movement} item={item} />}
    </li>
  )
}

/** Asked once. What an entry from the field used is put right at that entry. */
function TakeBack({ movement: { movementId, says }, item }: { movement: StockMovementShown; item: StockItem }) {
  const [back, setBack] = useState<ReturnType<typeof takenBack> | null>(null)
  const move = useMoveStock()
  const ask = () => setBack((made) => (made ? null : takenBack(item.itemId, movementId, { now: new Date(), newId })))
  return (
    <>
      <button type="button" className={css.quiet} aria-expanded={back !== null} aria-label={`Take back: ${says}`} onClick={ask}>
        Take back
      </button>
      {back && (
        <div className={css.asked}>
          <p>It stays on record, struck through, and the books follow as if it had not happened.</p>
          <div className={page.acts}>
            <button type="button" className="main" disabled={move.isPending} onClick={() => move.mutate([back])}>
              Take it back
            </button>
            <button type="button" onClick={() => setBack(null)}>
              Let it stand
            </button>
          </div>
          {move.error && <ProblemNote error={move.error} />}
        </div>
      )}
    </>
  )
}
