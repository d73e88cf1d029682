import type { showLeakLosses } from '@glandkeeper/contract/leak-losses'
import type { OkOf } from '@glandkeeper/contract/endpoint'
import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { counted, formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { Reading } from '../../ui/reading.tsx'
import { asSentence } from '../../ui/sentence.ts'
import { AreaLosses } from './area-losses.tsx'
import { GradeMark } from './grade-mark.tsx'
import { LeakPages } from './index.tsx'
import { leaksWith } from './leak-address.ts'
import { TaggedValve } from './leak-links.tsx'
import css from './leaks.module.css'
import { LossTable } from './loss-table.tsx'
import { carbonInWords, massInWords, moneyInWords } from './loss-words.ts'
import { leakLosses } from './queries.ts'

type Losses = OkOf<typeof showLeakLosses>

/** What the leaks lose that nobody has seen gone, and what that costs. */
export function LossesPage() {
  const known = useQuery(leakLosses)
  return (
    <main className={page.page}>
      <title>Losses by leaks · Glandkeeper</title>
      <div className={page.title}>
        <h1>Losses</h1>
        <LeakPages />
      </div>
      {known.data ? <Shown losses={known.data} /> : <Reading query={known} things="losses" />}
    </main>
  )
}

function Shown({ losses: { losses, byArea, total, withoutFigure, hoursPerYear, says } }: { losses: Losses }) {
  return (
    <>
      {losses.length > 0 ? <Total total={total} hoursPerYear={hoursPerYear} /> : <NoLosses without={withoutFigure.length} />}
      {losses.length > 0 && (
        <>
          <AreaLosses areas={byArea} />
          <section className={css.part} aria-labelledby="each">
            <h2 id="each">Leak by leak</h2>
            <LossTable losses={losses} />
          </section>
        </>
      )}
      {withoutFigure.length > 0 && <WithoutFigure without={withoutFigure} />}
      {says.length > 0 && (
        <section className={css.part} aria-labelledby="counted">
          <h2 id="counted">How this is counted</h2>
          <ul className={css.plainList}>
            {says.map((sentence) => (
              <li key={sentence}>{asSentence(sentence)}</li>
            ))}
          </ul>
        </section>
      )}
    </>
  )
}

function Total({ total, hoursPerYear }: Pick<Losses, 'total' | 'hoursPerYear'>) {
  return (
    <div className={css.head}>
      <p className={css.large}>{massInWords(total.kilogramsPerHour)}</p>
      <p>
        are lost through the {counted(total.leaks, 'leak', 'leaks')} with a figure, of{' '}
        <Link to={leaksWith({ state: 'not verified' })}>all that nobody has seen gone</Link>. In a year of{' '}
        {formatCount(hoursPerYear)} hours under pressure that is:
      </p>
      <dl className={css.year}>
        <dt>in the money of the site</dt>
        <dd>{total.moneyPerYear ? moneyInWords(total.moneyPerYear) : <NotSet what="price" />}</dd>
        <dt>carbon</dt>
        <dd>{total.carbonPerYear ? carbonInWords(total.carbonPerYear) : <NotSet what="factor" />}</dd>
      </dl>
    </div>
  )
}

function NotSet({ what }: { what: string }) {
  return (
    <>
      no {what} set: <Link to="/register/settings">Settings</Link>
    </>
  )
}

function NoLosses({ without }: { without: number }) {
  if (without === 0) return <p className={css.sentence}>Every leak was seen gone: nothing is lost that is known of.</p>
  return (
    <p className={css.sentence}>
      Nobody has seen {counted(without, 'leak')} gone, and nobody has given a figure for {without === 1 ? 'it' : 'any'}: no drops
      counted, no opening, no screening value.
    </p>
  )
}

function WithoutFigure({ without }: { without: Losses['withoutFigure'] }) {
  return (
    <section className={css.part} aria-labelledby="without">
      <h2 id="without">
        Without a figure <span className="soft">{formatCount(without.length)}</span>
      </h2>
      <p>
        Nobody has seen these gone either, and they are in no sum. Drops in a minute, a screening value, or the width of the
        opening give a figure.
      </p>
      <ul className={css.without}>
        {without.map(({ tag, grade }) => (
          <li key={tag}>
            <TaggedValve tag={tag} />
            {grade === null ? <span className="soft">not said how it leaks</span> : <GradeMark grade={grade} />}
            <Link to={`/valves/${encodeURIComponent(tag)}/log`} aria-label={`Log a figure for ${tag}`}>
              log a figure
            </Link>
          </li>
        ))}
      </ul>
    </section>
  )
}
