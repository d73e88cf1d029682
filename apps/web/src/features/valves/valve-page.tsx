import { printJobPack } from '@glandkeeper/contract/job-packs'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import { useQuery } from '@tanstack/react-query'
import { format } from 'date-fns'
import { Link, useParams } from 'react-router'
import { addressOf } from '../../platform/client.ts'
import { atSite } from '../../platform/site-time.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useMe } from '../people/index.tsx'
import { PlannedLooks } from '../round-plans/index.tsx'
import { NextStep } from './next-step.tsx'
import { PackingWarning } from './packing-warning.tsx'
import { valveQuery } from './queries.ts'
import { RegisterChanges } from './register-changes.tsx'
import { ReservePlot } from './reserve-plot.tsx'
import { SectionDrawing } from './section-drawing.tsx'
import { Timeline } from './timeline.tsx'
import { ValveTitle } from './valve-title.tsx'
import look from './valve-page.module.css'

/** Everything known of one valve: what it is, where its gland stands, what to do, and how it came to that. */
export function ValvePage() {
  const { tag = '' } = useParams()
  const valve = useQuery(valveQuery(tag))
  if (valve.data) return <KnownValve key={valve.data.valve.valveId} history={valve.data} now={new Date(valve.dataUpdatedAt)} />
  return (
    <main className={page.page}>
      <header className={look.title}>
        <h1>{tag}</h1>
      </header>
      {valve.isError ? (
        <ProblemNote error={valve.error} again={{ words: 'Load it again', onPress: () => void valve.refetch() }} />
      ) : (
        <p className="soft" role="status">
          Looking the valve up
        </p>
      )}
    </main>
  )
}

/** `now` is when the history was read. */
function KnownValve({ history, now }: { history: ValveHistory; now: Date }) {
  const person = useMe()
  const { timeZone } = person.site
  return (
    <main className={page.page}>
      <title>{`${history.valve.tag} · Glandkeeper`}</title>
      <ValveTitle valve={history.valve} standing={history.state.standing} />
      <div className={look.drawings}>
        <SectionDrawing history={history} />
        <ReservePlot history={history} now={now} site={person.site} />
      </div>
      <NextStep history={history} person={person} today={format(atSite(now, timeZone), 'yyyy-MM-dd')} />
      <PlannedLooks tag={history.valve.tag} />
      <ForRepack tag={history.valve.tag} />
      <nav className={look.ways} aria-label="About its leaks">
        <Link to={`/valves/${encodeURIComponent(history.valve.tag)}/leaks`}>Leak history</Link>
      </nav>
      <PackingWarning tag={history.valve.tag} />
      <Timeline timeline={history.timeline} tag={history.valve.tag} timeZone={timeZone} />
      <RegisterChanges changes={history.registerChanges} timeZone={timeZone} />
    </main>
  )
}

/** What is taken along to a repack. */
function ForRepack({ tag }: { tag: string }) {
  return (
    <nav className={look.ways} aria-label="For a repack">
      <Link to={`/valves/${encodeURIComponent(tag)}/cut-card`}>Cut card for a repack</Link>
      <a href={addressOf(printJobPack, { params: { tag } })} target="_blank" rel="noreferrer">
        Job pack (PDF)
      </a>
      <Link to={`/stores/kit?tag=${encodeURIComponent(tag)}`}>Kit from the store</Link>
    </nav>
  )
}
