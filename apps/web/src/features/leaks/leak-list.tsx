import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { counted } from '../../ui/count.ts'
import { useIsNarrow } from '../../ui/narrow.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { Reading } from '../../ui/reading.tsx'
import { type LeakView, orders, PAGE, withLeaks } from './leak-address.ts'
import { LeakCards } from './leak-cards.tsx'
import { LeakTable } from './leak-table.tsx'
import { pageInWords } from './leak-words.ts'
import css from './leaks.module.css'
import { leakList } from './queries.ts'
import { ShownFilters } from './shown-filters.tsx'

/** The leaks that the filters let through, a hundred at a time. */
export function LeakList({ view }: { view: LeakView }) {
  const isNarrow = useIsNarrow()
  const known = useQuery(leakList(view))
  const { total, valves, rows } = known.data ?? { total: 0, valves: 0, rows: [] }
  return (
    <section className={css.part} aria-labelledby="list" aria-busy={known.isPlaceholderData}>
      <h2 id="list">
        {known.data ? (
          <>
            {counted(total, 'leak')} <span className="soft">at {counted(valves, 'valve')}</span>
          </>
        ) : (
          'Leaks'
        )}
      </h2>
      <ShownFilters view={view} />
      {known.data && known.error && (
        <ProblemNote error={known.error} again={{ words: 'Read the leaks again', onPress: () => void known.refetch() }} />
      )}
      {!known.data ? (
        <Reading query={known} things="leaks" />
      ) : total === 0 ? (
        <NoLeaks view={view} />
      ) : (
        <>
          <Orders view={view} />
          <div className={css.rows}>{isNarrow ? <LeakCards rows={rows} /> : <LeakTable rows={rows} />}</div>
          <Pages view={view} shown={rows.length} total={total} />
        </>
      )}
    </section>
  )
}

function NoLeaks({ view }: { view: LeakView }) {
  if (Object.keys(view.filters).length > 0) return <p>No leak fits. Take a filter away, or show all leaks.</p>
  return <p>No leak has been seen yet. Whoever logs a look at a gland says how it leaks, and it stands here from then on.</p>
}

function Orders({ view }: { view: LeakView }) {
  return (
    <nav aria-label="Order of the leaks" className={css.choices}>
      {orders.map((order) => (
        <Link
          key={order}
          to={withLeaks(view, { order })}
          preventScrollReset
          aria-current={view.order === order ? 'true' : undefined}
        >
          {order}
        </Link>
      ))}
    </nav>
  )
}

function Pages({ view, shown, total }: { view: LeakView; shown: number; total: number }) {
  const next = view.skip + shown
  if (view.skip === 0 && next >= total) return null
  return (
    <nav aria-label="Pages of the list" className={css.choices}>
      <span className="soft">{pageInWords({ skip: view.skip, shown, total })}</span>
      {view.skip > 0 && <Link to={withLeaks(view, { skip: Math.max(0, view.skip - PAGE) })}>The page before</Link>}
      {shown > 0 && next < total && <Link to={withLeaks(view, { skip: next })}>The next page</Link>}
    </nav>
  )
}
