import { useQuery } from '@tanstack/react-query'
import { Link, useSearchParams } from 'react-router'
import { counted } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { Reading } from '../../ui/reading.tsx'
import { LeakPages } from './index.tsx'
import { type LeakView, leakViewOf, withLeaks } from './leak-address.ts'
import { LeakFiltersForm } from './leak-filters.tsx'
import { LeakList } from './leak-list.tsx'
import { yearsInWords } from './leak-words.ts'
import css from './leaks.module.css'
import { MonthBars } from './month-bars.tsx'
import { leaksByMonth } from './queries.ts'

/** Every leak of the plant: how many by month, what stands open, and what became of each. */
export function LeaksPage() {
  const [address] = useSearchParams()
  const view = leakViewOf(address)
  const { area, service } = view.filters
  const known = useQuery(leaksByMonth({ area, service }))
  return (
    <main className={page.page}>
      <title>Leaks · Glandkeeper</title>
      <div className={page.title}>
        <h1>Leaks</h1>
        <LeakPages />
      </div>
      {known.data ? (
        <section className={css.part} aria-label="Leaks by month">
          <Standing open={known.data.open} attempted={known.data.attempted} view={view} />
          <MonthBars months={known.data.months} view={view} />
          <p>{yearsInWords(known.data.months)}</p>
        </section>
      ) : (
        <Reading query={known} things="leaks by month" />
      )}
      <LeakFiltersForm view={view} services={known.data?.services ?? []} />
      <LeakList view={view} />
    </main>
  )
}

/** Both numbers lead to their leaks. */
function Standing({ open, attempted, view }: { open: number; attempted: number; view: LeakView }) {
  const all = { age: null, family: null, month: null, afterOutage: null, tag: null }
  return (
    <p className={css.sentence}>
      <Link to={withLeaks(view, { ...all, state: 'open' })} preventScrollReset className={open > 0 ? 'hot' : undefined}>
        {counted(open, 'leak stands', 'leaks stand')} open
      </Link>
      ,{' '}
      <Link to={withLeaks(view, { ...all, state: 'attempted' })} preventScrollReset>
        {counted(attempted, 'was treated and nobody has', 'were treated and nobody has')} looked since
      </Link>
      .
    </p>
  )
}
