import type { Round } from '@glandkeeper/contract/rounds'
import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from 'react-router'
import { carriedQuery, roundsQuery } from '../pocket/queries.ts'
import { EntryGrid } from './entry-grid.tsx'
import look from './round-entry.module.css'

/** The sheet of a round, typed in row by row with the keyboard alone. */
export function TypeInPage() {
  const { roundId = '' } = useParams()
  const rounds = useQuery(roundsQuery)
  const carried = useQuery(carriedQuery)
  const round: Round | undefined = rounds.data?.find((candidate) => candidate.roundId === roundId)
  return (
    <main className={look.page}>
      <title>{`Type in ${round?.name ?? 'a round'} · Glandkeeper`}</title>
      {round && !carried.isPending ? (
        <EntryGrid key={roundId} round={round} cards={carried.data ?? []} />
      ) : (
        <>
          <h1>{rounds.isPending || round ? 'Opening the round' : 'This round is not on this device'}</h1>
          {!rounds.isPending && !round && (
            <p>
              It may have been closed, or was made since this device last heard of the server.{' '}
              <Link to="/rounds">All rounds</Link>
            </p>
          )}
        </>
      )}
    </main>
  )
}
