import type { OkOf } from '@glandkeeper/contract/endpoint'
import { type comparePackings, HeatBand } from '@glandkeeper/contract/packing-lives'
import { useQuery } from '@tanstack/react-query'
import { Link, useNavigate, useSearchParams } from 'react-router'
import { formatMoment } from '../../platform/site-time.ts'
import { counted } from '../../ui/count.ts'
import { Empty } from '../../ui/empty.tsx'
import { ChoiceInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { Reading } from '../../ui/reading.tsx'
import { asSentence } from '../../ui/sentence.ts'
import { useMe } from '../people/index.tsx'
import { type LivesView, livesViewOf, withLives } from './lives-address.ts'
import { LivesTable } from './lives-table.tsx'
import { differenceInWords } from './lives-words.ts'
import css from './lives.module.css'
import { packingLives } from './queries.ts'
import { StairsPlot } from './stairs-plot.tsx'

type Compared = OkOf<typeof comparePackings>

/** Which packing lasts longest where: lives of this plant, with those that have not ended yet. */
export function LivesPage() {
  const [address] = useSearchParams()
  const view = livesViewOf(address)
  const known = useQuery(packingLives(view))
  return (
    <main className={page.page}>
      <title>How long packings last · Glandkeeper</title>
      <div className={page.title}>
        <h1>How long packings last</h1>
        <Link to="/packings">Packings</Link>
        <Link to="/leaks/repeat">Repeat leakers</Link>
      </div>
      <Choices view={view} services={known.data?.services ?? []} />
      {known.data ? (
        <div aria-busy={known.isPlaceholderData} className={css.compared}>
          <Shown compared={known.data} view={view} />
        </div>
      ) : (
        <Reading query={known} things="lives of packings" />
      )}
    </main>
  )
}

const ALL = 'all services'
const heats = HeatBand.options.map((heat) => ({ value: heat, words: heat === 'any' ? 'any heat' : heat }))

function Choices({ view, services }: { view: LivesView; services: readonly string[] }) {
  const go = useNavigate()
  const choose = (change: Partial<LivesView>) => void go(withLives(view, change), { preventScrollReset: true })
  const listed = view.service === null || services.includes(view.service) ? services : [view.service, ...services]
  return (
    <search className={css.choices} aria-label="Lives to compare">
      <ChoiceInput
        label="Service"
        value={view.service ?? ALL}
        choices={[ALL, ...listed].map((value) => ({ value, words: value }))}
        onChange={(service) => choose({ service: service === ALL ? null : service })}
      />
      <ChoiceInput
        label="What goes through"
        value={view.heat}
        choices={heats}
        onChange={(heat) => choose({ heat: HeatBand.safeParse(heat).data ?? 'any' })}
      />
    </search>
  )
}

function Shown({ compared, view }: { compared: Compared; view: LivesView }) {
  const { madeAt, packings, sentence, leftOut, notSeenSince, logRank } = compared
  if (madeAt === null)
    return (
      <Empty title="No lives have been read yet">
        <p>
          They are read together with the <Link to="/leaks/repeat">study of leaks</Link>, and stand here when it is made.
        </p>
      </Empty>
    )
  if (packings.length === 0)
    return (
      <Empty title="No life of a packing is known here">
        <p>
          {isNarrowed(view) ? (
            <Link to="?">Compare in all services and at any heat</Link>
          ) : (
            'A life begins with a repack that is logged.'
          )}
        </p>
      </Empty>
    )
  return (
    <>
      <p className={css.large}>{asSentence(sentence)}</p>
      <StairsPlot packings={packings} />
      <p className={css.lead}>{differenceInWords(logRank)}</p>
      <LivesTable packings={packings} />
      <HowCounted leftOut={leftOut} notSeenSince={notSeenSince} madeAt={madeAt} />
    </>
  )
}

function isNarrowed({ service, heat }: LivesView): boolean {
  return service !== null || heat !== 'any'
}

function HowCounted({ leftOut, notSeenSince, madeAt }: { leftOut: number; notSeenSince: number; madeAt: string }) {
  const { timeZone } = useMe().site
  return (
    <section className={css.part} aria-labelledby="counted">
      <h2 id="counted">How this is counted</h2>
      <ul className={css.list}>
        <li>
          Worn out is a packing that was renewed with little travel left or while it leaked; one renewed earlier, or still in,
          counts as still going then.
        </li>
        <li>A packing put only into easy valves looks better than it is. Compare within one service.</li>
        <li>Fewer than five worn out say little: such a packing is drawn thin, and is not compared.</li>
        {leftOut > 0 && <li>{counted(leftOut, 'life', 'lives')} left out: nobody recorded when the packing was put in.</li>}
        {notSeenSince > 0 && (
          <li>{counted(notSeenSince, 'life', 'lives')} left out: nobody has looked since the packing was put in.</li>
        )}
        <li>Read on {formatMoment(madeAt, timeZone)}.</li>
      </ul>
    </section>
  )
}
