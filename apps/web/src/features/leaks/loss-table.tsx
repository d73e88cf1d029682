import type { LeakLoss } from '@glandkeeper/contract/leak-losses'
import { useState } from 'react'
import { formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { asSentence } from '../../ui/sentence.ts'
import { useMe } from '../people/index.tsx'
import { GradeMark } from './grade-mark.tsx'
import { TaggedValve } from './leak-links.tsx'
import { dayAtSite } from './leak-words.ts'
import css from './leaks.module.css'
import { carbonInWords, markInWords, massInWords, moneyInWords, mostFirst } from './loss-words.ts'

const FIRST_SHOWN = 100

/** Each leak with its figure, how that was found, and how far to trust it; what loses most on top. */
export function LossTable({ losses }: { losses: readonly LeakLoss[] }) {
  const [showsAll, setShowsAll] = useState(false)
  const shown = showsAll ? mostFirst(losses) : mostFirst(losses).slice(0, FIRST_SHOWN)
  const hasMoney = losses.some(({ moneyPerYear }) => moneyPerYear !== null)
  const hasCarbon = losses.some(({ carbonPerYear }) => carbonPerYear !== null)
  return (
    <>
      <table className={`${page.table} ${css.table} ${css.stacked}`}>
        <thead>
          <tr>
            <th scope="col">Valve</th>
            <th scope="col">Loss</th>
            {hasMoney && <th scope="col">Money in a year</th>}
            {hasCarbon && <th scope="col">Carbon in a year</th>}
            <th scope="col">How it was found</th>
            <th scope="col">Seen</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((loss) => (
            <Row key={loss.leakId} {...{ loss, hasMoney, hasCarbon }} />
          ))}
        </tbody>
      </table>
      {shown.length < losses.length && (
        <button type="button" onClick={() => setShowsAll(true)}>
          Show all {formatCount(losses.length)}
        </button>
      )}
    </>
  )
}

function Row({ loss, hasMoney, hasCarbon }: { loss: LeakLoss; hasMoney: boolean; hasCarbon: boolean }) {
  const { timeZone } = useMe().site
  return (
    <tr>
      <th scope="row">
        <TaggedValve tag={loss.tag} /> <span className={css.plain}>{loss.description}</span>
        <span className={`soft ${css.line} ${css.plain}`}>
          {loss.areaCode}, {loss.service}
        </span>
      </th>
      <td data-name="Loss" className={`${css.figure} ${css.long}`}>
        {massInWords(loss.kilogramsPerHour)}
      </td>
      {hasMoney && (
        <td data-name="Money in a year" className={`${css.figure} ${css.long}`}>
          {loss.moneyPerYear ? moneyInWords(loss.moneyPerYear) : 'no price set'}
        </td>
      )}
      {hasCarbon && (
        <td data-name="Carbon in a year" className={`${css.figure} ${css.long}`}>
          {loss.carbonPerYear ? carbonInWords(loss.carbonPerYear) : 'no factor set'}
        </td>
      )}
      <td data-name="How it was found" className={css.long}>
        {loss.method}
        <span className={loss.mark === 'from memory' ? css.line : `soft ${css.line}`}>{markInWords(loss.mark)}</span>
        {loss.care !== null && <b className={css.line}>{asSentence(loss.care)}</b>}
      </td>
      <td data-name="Seen" className={css.long}>
        {loss.grade !== null && <GradeMark grade={loss.grade} />}
        <time dateTime={loss.seenAt} className={css.line}>
          {dayAtSite(loss.seenAt, timeZone)}
        </time>
      </td>
    </tr>
  )
}
