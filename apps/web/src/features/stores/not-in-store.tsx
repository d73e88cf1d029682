import type { OkOf } from '@glandkeeper/contract/endpoint'
import type { showStockOutlook } from '@glandkeeper/contract/stores'
import { asSentence } from '../../ui/sentence.ts'
import { TagList } from './tag-list.tsx'
import css from './stores.module.css'

type Outlook = Pick<OkOf<typeof showStockOutlook>, 'unknown' | 'open'>

/** Packing that the plan needs and the store has no item for. */
export function NotInStore({ unknown }: Pick<Outlook, 'unknown'>) {
  if (unknown.length === 0) return null
  return (
    <section className={css.section} aria-labelledby="not-in-store">
      <h2 id="not-in-store">The plan needs it, the store has no such item</h2>
      <ul className={css.needs}>
        {unknown.map(({ needs, tags }) => (
          <li key={needs}>
            <b className="hot">{asSentence(needs)}</b> For <TagList tags={tags} />
          </li>
        ))}
      </ul>
    </section>
  )
}

/** What nobody can say the need of, by what is not known. */
export function NotWorkedOut({ open }: Pick<Outlook, 'open'>) {
  if (open.length === 0) return null
  return (
    <section className={css.section} aria-labelledby="not-worked-out">
      <h2 id="not-worked-out">Cannot be worked out</h2>
      <ul className={css.needs}>
        {open.map(({ says, tags }) => (
          <li key={says}>
            {asSentence(says)} <TagList tags={tags} />
          </li>
        ))}
      </ul>
    </section>
  )
}
