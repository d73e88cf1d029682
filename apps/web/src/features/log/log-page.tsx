import { exportLog, type LogRow } from '@glandkeeper/contract/log'
import { useQuery } from '@tanstack/react-query'
import { Link, useSearchParams } from 'react-router'
import { addressOf } from '../../platform/client.ts'
import { Empty } from '../../ui/empty.tsx'
import { useIsNarrow } from '../../ui/narrow.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { Reading } from '../../ui/reading.tsx'
import { Filters } from './filters.tsx'
import { daysAreTurned, filtersOf, isFiltered, type LogView, logViewOf, PAGE, withLogView } from './log-address.ts'
import { LogCards } from './log-cards.tsx'
import { LogTable } from './log-table.tsx'
import { pageInWords } from './log-words.ts'
import css from './log.module.css'
import { logPage } from './queries.ts'

/** Who changed what in the register, the newest first. */
export function LogPage() {
  const [address] = useSearchParams()
  const view = logViewOf(address)
  const known = useQuery(logPage(view))
  return (
    <main className={page.page}>
      <title>Log · Glandkeeper</title>
      <div className={page.title}>
        <h1>Log</h1>
        <span className="soft">who changed what in the register, the newest first</span>
        <Link to="/leaks/evidence">Evidence of what was done at the valves</Link>
      </div>
      <Filters view={view} people={known.data?.people ?? []} />
      {known.data ? (
        <Found view={view} found={known.data} isOld={known.isPlaceholderData} />
      ) : (
        <Reading query={known} things="log" />
      )}
      {known.data && known.error && (
        <ProblemNote error={known.error} again={{ words: 'Read the log again', onPress: () => void known.refetch() }} />
      )}
    </main>
  )
}

interface FoundProps {
  view: LogView
  found: { readonly total: number; readonly rows: readonly LogRow[] }
  /** Another page or filter is on its way. */
  isOld: boolean
}

function Found({ view, found: { total, rows }, isOld }: FoundProps) {
  const isNarrow = useIsNarrow()
  if (total === 0 && !isOld) return <NothingFound view={view} />
  return (
    <>
      <div className={css.above}>
        <Pages {...{ view, total }} shown={rows.length} />
        <a href={addressOf(exportLog, { query: filtersOf(view) })} download>
          Download {isFiltered(view) ? 'these changes' : 'the log'} as a table (CSV)
        </a>
      </div>
      <div aria-busy={isOld} className={css.rows}>
        {isNarrow ? <LogCards rows={rows} /> : <LogTable rows={rows} />}
      </div>
      {rows.length > 0 && <Pages {...{ view, total }} shown={rows.length} isBelow />}
    </>
  )
}

function NothingFound({ view }: { view: LogView }) {
  if (!isFiltered(view)) {
    return (
      <Empty title="Nothing has been changed yet">
        <p>Each change of valves, areas, people, crews, plans, outages and the store is put down here by itself.</p>
      </Empty>
    )
  }
  return (
    <Empty title="No change fits">
      <p>
        {daysAreTurned(view) ? 'The last day comes before the first. ' : ''}
        <Link to="?">Show all changes</Link>
      </p>
    </Empty>
  )
}

interface PagesProps {
  view: LogView
  shown: number
  total: number
  isBelow?: boolean
}

function Pages({ view, shown, total, isBelow = false }: PagesProps) {
  const { skip } = view
  const next = skip + shown
  if (isBelow && skip === 0 && next >= total) return null
  return (
    <nav aria-label={isBelow ? 'Older and newer changes, below the list' : 'Older and newer changes'} className={css.pages}>
      <span role={isBelow ? undefined : 'status'}>{pageInWords({ skip, shown, total })}</span>
      {skip > 0 && (
        <Link to={withLogView(view, { skip: shown === 0 ? 0 : Math.max(0, skip - PAGE) })}>
          {shown === 0 ? 'The newest' : 'Newer'}
        </Link>
      )}
      {shown > 0 && next < total && <Link to={withLogView(view, { skip: next })}>Older</Link>}
    </nav>
  )
}
