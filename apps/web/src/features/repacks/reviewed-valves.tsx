import type { ReviewedRepack } from '@glandkeeper/contract/outages'
import { useState } from 'react'
import { Link } from 'react-router'
import { formatDay } from '../../platform/site-time.ts'
import { counted, formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import css from './repacks.module.css'
import { worstFirst } from './review-words.ts'

const FIRST_SHOWN = 40

/** Each valve of an outage: what leaked, was lost or not done on top. */
export function ReviewedValves({ valves }: { valves: readonly ReviewedRepack[] }) {
  const [isAll, setIsAll] = useState(false)
  if (valves.length === 0) return null
  const ranked = worstFirst(valves)
  return (
    <section className={css.part} aria-labelledby="valves">
      <h2 id="valves">
        Valves, what needs a look first <span className="soft">{formatCount(valves.length)}</span>
      </h2>
      <table className={`${page.table} ${css.rows}`}>
        <thead>
          <tr>
            <th scope="col">Valve</th>
            <th scope="col">Repacked</th>
            <th scope="col">By</th>
            <th scope="col">Packing</th>
            <th scope="col">Proved</th>
            <th scope="col">Within 30 days</th>
            <th scope="col">Follow-up</th>
          </tr>
        </thead>
        <tbody>
          {(isAll ? ranked : ranked.slice(0, FIRST_SHOWN)).map((valve) => (
            <Row key={valve.tag} valve={valve} />
          ))}
        </tbody>
      </table>
      {!isAll && ranked.length > FIRST_SHOWN && (
        <button type="button" onClick={() => setIsAll(true)}>
          Show all {formatCount(ranked.length)}
        </button>
      )}
    </section>
  )
}

function Row({ valve }: { valve: ReviewedRepack }) {
  const { tag, description, areaCode, isPlanned, repackedOn, doneBy, family, isProved, leakedAfterDays } = valve
  return (
    <tr>
      <th scope="row">
        <Link to={`/valves/${encodeURIComponent(tag)}`} className={css.tag}>
          {tag}
        </Link>{' '}
        <span className={css.plain}>{description}</span>
        <span className={`soft ${css.line}`}>{areaCode}</span>
      </th>
      <td data-name="repacked">
        {repackedOn === null ? <b>not done</b> : formatDay(repackedOn)}
        {!isPlanned && ', not planned'}
      </td>
      <td data-name="by">{doneBy ?? (repackedOn === null ? '–' : 'not said')}</td>
      <td data-name="packing">{family ?? (repackedOn === null ? '–' : 'not said')}</td>
      <td data-name="proved">{isProved === null ? '–' : isProved ? 'yes' : 'no'}</td>
      <td data-name="within 30 days">
        {leakedAfterDays === null ? (
          repackedOn === null ? (
            '–'
          ) : (
            'no leak seen'
          )
        ) : (
          <b className="hot">leaked {leakedAfterDays === 0 ? 'on its day' : `after ${counted(leakedAfterDays, 'day')}`}</b>
        )}
      </td>
      <td data-name="follow-up">{followUpInWords(valve)}</td>
    </tr>
  )
}

function followUpInWords({ followUp, followUpOn }: ReviewedRepack): string {
  if (followUp === null) return '–'
  const day = followUpOn === null ? '' : ` ${formatDay(followUpOn)}`
  if (followUp === 'made') return `made${day}`
  return followUp === 'due' ? `due${day}` : `lost, was due${day}`
}
