import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { CardDrawings } from '@glandkeeper/drawings/cut-card'
import { cordHeading, firstOfAll, mainFigures, remarksOf, serviceInWords } from '@glandkeeper/drawings/cut-card-words'
import { formatDay } from '../../platform/site-time.ts'
import { Drawn } from '../../ui/drawn.tsx'
import look from './cut-card.module.css'

export function CardTitle({ card }: { card: CutCard }) {
  return (
    <header className={look.title}>
      <h1>{card.tag}</h1>
      <div className={look.what}>
        <div>{card.description}</div>
        <div className="soft">{serviceInWords(card)}</div>
        <b className="hot">{firstOfAll}</b>
      </div>
      <div className={look.made}>
        <div>Cut card</div>
        <time className="soft" dateTime={card.madeOn}>
          {formatDay(card.madeOn)}
        </time>
      </div>
    </header>
  )
}

interface PartProps {
  card: CutCard
  drawings: CardDrawings
}

export function Facts({ card, drawings: { section, sectionNote } }: PartProps) {
  return (
    <section className={look.facts} aria-label="What to cut">
      <figure>
        <Drawn drawing={section} />
        <figcaption className={`soft ${look.small}`}>{sectionNote}</figcaption>
      </figure>
      <div>
        <dl className={look.figures}>
          {mainFigures(card).map(({ figure, says, range }) => (
            <div key={says}>
              <dt>{figure ?? <Blank />}</dt>
              <dd>
                {says}
                {range !== null && <div className="soft">{range}</div>}
              </dd>
            </div>
          ))}
        </dl>
        {remarksOf(card).map((line) => (
          <p key={line}>{line}</p>
        ))}
        {card.rings?.says.map((line) => (
          <p key={line} className={`soft ${look.small}`}>
            {line}
          </p>
        ))}
      </div>
    </section>
  )
}

/** A line to write on. */
export function Blank() {
  return (
    <span className={look.blank} role="img" aria-label="not known">
      {' '}
    </span>
  )
}

export function Cord({ card, drawings }: PartProps) {
  const { cord, ruler } = drawings
  return (
    <section>
      <h2>{cordHeading(card, drawings)}</h2>
      {cord && <Drawn drawing={cord} />}
      <div className={look.beside}>
        <ul>
          {card.cutNotes.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        {cord && (
          <figure>
            <Drawn drawing={ruler} />
            <figcaption className={`soft ${look.small}`}>50 mm on paper at 100 %; a screen has its own size.</figcaption>
          </figure>
        )}
      </div>
    </section>
  )
}
