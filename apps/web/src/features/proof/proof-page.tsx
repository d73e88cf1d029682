import { firstOfAll } from '@glandkeeper/drawings/cut-card-words'
import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from 'react-router'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { cutCardQuery } from '../cut-cards/queries.ts'
import { cardQuery } from '../pocket/queries.ts'
import { cautionFor } from '../readings/index.ts'
import { ProofForm } from './proof-form.tsx'
import look from './proof.module.css'

/** A repack step by step, at the valve and with one thumb: rings, load, wheel, gaps, and the entry made of them. */
export function ProofPage() {
  const { tag = '' } = useParams()
  const valve = useQuery(cardQuery(tag))
  const cut = useQuery(cutCardQuery(tag))
  const problem = valve.isError ? valve : null
  return (
    <main className={look.page}>
      <title>{`Proof after a repack · ${tag} · Glandkeeper`}</title>
      {valve.data && !cut.isPending ? (
        <>
          <Head valve={valve.data.valve} card={cut.data ?? null} />
          {cut.isError && (
            <ProblemNote error={cut.error} again={{ words: 'Load the card again', onPress: () => void cut.refetch() }} />
          )}
          <ProofForm key={valve.data.valve.valveId} valve={valve.data} card={cut.data ?? null} />
        </>
      ) : (
        <div className={look.brief}>
          <h1>{tag}</h1>
          {problem ? (
            <ProblemNote error={problem.error} again={{ words: 'Load it again', onPress: () => void problem.refetch() }} />
          ) : (
            <p className="soft" role="status">
              Working the steps out
            </p>
          )}
        </div>
      )}
    </main>
  )
}

/** What can hurt stays in sight; the whole list is a touch away. */
function Head({ valve, card }: { valve: ValveCard['valve']; card: CutCard | null }) {
  const cautions = card ? [...card.hazards, ...card.cautions] : []
  return (
    <div className={look.brief}>
      <header className={look.head}>
        <h1>{valve.tag}</h1>
        <p>
          Proof after a repack
          {valve.description && ` · ${valve.description}`}
        </p>
        <Link to={`/valves/${encodeURIComponent(valve.tag)}/cut-card`}>Cut card</Link>
      </header>
      <p className={look.caution}>
        <b>{firstOfAll.replace(': see the cautions', '')}</b> {cautionFor(valve)}
      </p>
      {cautions.length > 0 && (
        <details className={look.cautions}>
          <summary>All cautions</summary>
          <ul>
            {cautions.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}
