import type { Kit } from '@glandkeeper/contract/kits'
import { useQuery } from '@tanstack/react-query'
import { format, parseISO } from 'date-fns'
import { Link, useSearchParams } from 'react-router'
import { counted } from '../../ui/count.ts'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { capital } from '../../ui/sentence.ts'
import { IssueKit } from './issue-kit.tsx'
import { KitLineDrawn } from './kit-line.tsx'
import { NotWorkedOut } from './not-in-store.tsx'
import { usePrintOnPaper } from './print-on-paper.ts'
import { type KitAsked, kitAsked, stockOfSite } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import { useSiteToday } from '../people/index.tsx'
import css from './kit.module.css'

/** Everything from the store for a valve, an outage or a round, and how it is cut so that least is wasted. */
export function KitPage() {
  usePrintOnPaper()
  const [search] = useSearchParams()
  const asked = askedIn(search)
  return (
    <main className={`${page.page} ${css.kit}`}>
      <title>Kit · Stores · Glandkeeper</title>
      {asked ? (
        <AskedKit asked={asked} />
      ) : (
        <>
          <h1>Kit</h1>
          <Empty title="A kit is of a valve, an outage or a round">
            <p>
              Open it from there, or <Link to="/stores">look at the stores</Link>.
            </p>
          </Empty>
        </>
      )}
    </main>
  )
}

function askedIn(search: URLSearchParams): KitAsked | null {
  const [tag, outageId, roundId] = [search.get('tag'), search.get('outage'), search.get('round')]
  if (tag !== null && tag !== '') return { tag }
  if (outageId !== null && outageId !== '') return { outageId }
  return roundId !== null && roundId !== '' ? { roundId } : null
}

function AskedKit({ asked }: { asked: KitAsked }) {
  const kit = useQuery(kitAsked(asked))
  if (kit.data) return <KnownKit kit={kit.data} asked={asked} />
  return (
    <>
      <h1>Kit</h1>
      <Reading query={kit} things="kit" />
    </>
  )
}

function KnownKit({ kit, asked }: { kit: Kit; asked: KitAsked }) {
  const today = format(useSiteToday(), 'yyyy-MM-dd')
  const stock = useQuery(stockOfSite)
  const items = stock.data?.items ?? []
  const { title, valves, lines, open } = kit
  return (
    <>
      <div className={page.title}>
        <h1>{capital(title)}</h1>
        <span className="soft">
          {counted(valves, 'valve')}, <time dateTime={today}>{format(parseISO(today), 'd MMM yyyy')}</time>
        </span>
      </div>
      <div className={`${page.acts} ${css.acts}`}>
        <button type="button" onClick={() => print()}>
          Print
        </button>
        <Link to={backOf(asked).to}>{backOf(asked).words}</Link>
        <Link to="/stores">Stores</Link>
      </div>
      {lines.length === 0 && <p>Nothing is needed from the store{valves === 0 ? ': no valve is in it' : ''}.</p>}
      {lines.map((line) => (
        <KitLineDrawn key={`${line.itemId} ${line.name}`} line={line} items={items} />
      ))}
      <NotWorkedOut open={open} />
      {lines.length > 0 && stock.data && <IssueKit kit={kit} asked={asked} items={items} />}
      <p className="soft">Work is done under the permit and the procedure of the site: this list authorises nothing.</p>
    </>
  )
}

function backOf({ tag, outageId, roundId }: KitAsked): { to: string; words: string } {
  if (tag !== undefined) return { to: `/valves/${encodeURIComponent(tag)}`, words: `To ${tag}` }
  if (outageId !== undefined) return { to: '/repacks/outages', words: 'To the outages' }
  return { to: `/rounds/${roundId ?? ''}`, words: 'To the round' }
}
