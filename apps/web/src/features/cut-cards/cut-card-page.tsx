import type { CutCard } from '@glandkeeper/contract/cut-cards'
import { printJobPack } from '@glandkeeper/contract/job-packs'
import { cardDrawings } from '@glandkeeper/drawings/cut-card'
import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from 'react-router'
import { addressOf } from '../../platform/client.ts'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { Cautions, Open } from './cautions.tsx'
import { Cord, CardTitle, Facts } from './cutting.tsx'
import { Joints, Load, Proof, Spanners } from './loading.tsx'
import { cutCardQuery, paperAddress } from './queries.ts'
import look from './cut-card.module.css'

/** What to cut, how to load it and what to mind: for the bench, on a screen or on paper. */
export function CutCardPage() {
  const { tag = '' } = useParams()
  const card = useQuery(cutCardQuery(tag))
  return (
    <main className={page.page}>
      <title>{`Cut card ${tag} · Glandkeeper`}</title>
      <nav className={look.ways} aria-label="This card">
        <Link to={`/valves/${encodeURIComponent(tag)}`}>Back to {tag}</Link>
        <Link to={`/valves/${encodeURIComponent(tag)}/proof`}>Prove the repack</Link>
        <a href={paperAddress(tag, 'A5')} target="_blank" rel="noreferrer">
          PDF A5
        </a>
        <a href={paperAddress(tag, 'A4')} target="_blank" rel="noreferrer">
          PDF A4
        </a>
        <a href={addressOf(printJobPack, { params: { tag } })} target="_blank" rel="noreferrer">
          Job pack (PDF)
        </a>
      </nav>
      {card.data ? (
        <Card card={card.data} />
      ) : card.isError ? (
        <ProblemNote error={card.error} again={{ words: 'Load it again', onPress: () => void card.refetch() }} />
      ) : (
        <p className="soft" role="status">
          Working the card out
        </p>
      )}
    </main>
  )
}

const FRAME = 2 * 12 + 4
const SECTION = { width: 262, height: 240 }

function Card({ card }: { card: CutCard }) {
  const [frame, width] = useMeasuredWidth()
  const drawings =
    width === null || width === 0
      ? null
      : cardDrawings(card, {
          section: Math.min(SECTION.width, width - FRAME),
          sectionHeight: SECTION.height,
          cord: width - FRAME,
        })
  return (
    <article ref={frame} className={look.frame}>
      <CardTitle card={card} />
      {drawings && (
        <>
          <Facts card={card} drawings={drawings} />
          <Cord card={card} drawings={drawings} />
        </>
      )}
      <Cautions card={card} />
      {drawings && (
        <section className={look.two}>
          <Joints card={card} drawing={drawings.joints} />
          <Load card={card} />
        </section>
      )}
      <section className={look.three}>
        <Proof card={card} />
        <Spanners card={card} />
      </section>
      <Open card={card} />
      <p className="soft">{card.basis}</p>
    </article>
  )
}
