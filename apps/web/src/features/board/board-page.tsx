import { useQuery } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { Link, useSearchParams } from 'react-router'
import { Empty } from '../../ui/empty.tsx'
import { useIsNarrow } from '../../ui/narrow.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { AreaStrip } from './area-strip.tsx'
import css from './board-page.module.css'
import { isFiltered, viewOf, type BoardView } from './board-view.ts'
import { Filters } from './filters.tsx'
import { boardSummary, useBoardTop } from './queries.ts'
import { RowList } from './row-list.tsx'
import { RowTable } from './row-table.tsx'

export function BoardPage() {
  const [address] = useSearchParams()
  const view = viewOf(address)
  const summary = useQuery(boardSummary)
  return (
    <main>
      <title>Travel board · Glandkeeper</title>
      <h1 className={css.unseen}>Travel board</h1>
      {summary.data && summary.data.total > 0 && (
        <Narrowing view={view}>
          <AreaStrip areas={summary.data.areas} view={view} />
          <Filters summary={summary.data} view={view} />
        </Narrowing>
      )}
      <BoardBody view={view} />
    </main>
  )
}

/** On a phone the valves come first, so areas and filters fold into one line that says what is chosen. */
function Narrowing({ view, children }: { view: BoardView; children: ReactNode }) {
  const isNarrow = useIsNarrow()
  if (!isNarrow) return children
  const chosen = [view.standing, view.area, view.service, view.find && `“${view.find}”`].filter(Boolean)
  return (
    <details className={css.narrowing}>
      <summary>
        {chosen.length === 0 ? 'All valves' : chosen.join(', ')}, {view.order} <span className={css.change}>Choose</span>
      </summary>
      {children}
    </details>
  )
}

function BoardBody({ view }: { view: BoardView }) {
  const top = useBoardTop(view)
  const isNarrow = useIsNarrow()
  if (top.isPending) {
    return (
      <p role="status" className={`soft ${css.alone}`}>
        Reading the board
      </p>
    )
  }
  if (top.data === undefined) {
    return (
      <div className={css.alone}>
        <ProblemNote error={top.error} again={{ words: 'Read the board again', onPress: () => void top.refetch() }} />
      </div>
    )
  }
  if (top.data.total === 0) return isFiltered(view) ? <NothingMatches /> : <NoValves />
  const Rows = isNarrow ? RowList : RowTable
  return (
    <div className={top.isPlaceholderData ? css.waiting : undefined} aria-busy={top.isPlaceholderData}>
      {/* A new view starts at its top: the key forgets how far the last one was scrolled. */}
      <Rows key={JSON.stringify(view)} view={view} top={top.data} />
    </div>
  )
}

function NothingMatches() {
  return (
    <div className={css.alone}>
      <Empty title="No valve matches">
        <p>
          <Link to="?">Clear the filters</Link> to see every valve again.
        </p>
      </Empty>
    </div>
  )
}

function NoValves() {
  const person = useMe()
  return (
    <div className={css.alone}>
      <Empty title="No valve is in the register yet">
        {keepsRegister(person) ? (
          <p>
            <Link to="/imports">Import a valve list</Link> from a spreadsheet, or{' '}
            <Link to="/register/new-valve">add one valve by hand</Link>.
          </p>
        ) : (
          <p>A planner or engineer of your site fills it.</p>
        )}
      </Empty>
    </div>
  )
}
