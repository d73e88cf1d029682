import type { CalibrationRow } from '@glandkeeper/contract/calibration'
import page from '../../ui/page.module.css'
import { formatCount } from '../../ui/count.ts'
import { daysInWords, shareInWords } from './calibration-words.ts'
import css from './forecasts.module.css'

type Column = readonly [heading: string, figureOf: (row: CalibrationRow) => string]

const notKnown = ({ unknownBecause }: CalibrationRow) => unknownBecause ?? 'not watched long enough'

const columns: readonly Column[] = [
  ['Forecasts', ({ forecasts }) => formatCount(forecasts)],
  ['ran out', ({ ranOut }) => formatCount(ranOut)],
  ['inside 80 %', (row) => (row.within80 ? shareInWords(row.within80) : notKnown(row))],
  ['inside 95 %', (row) => (row.within95 ? shareInWords(row.within95) : notKnown(row))],
  ['middle off by', ({ middleMiss }) => (middleMiss ? daysInWords(middleMiss.days) : 'not known')],
  [
    'straight line against forecast',
    ({ besideStraightLine: both }) =>
      both ? `${daysInWords(both.straightLineDays)} against ${daysInWords(both.days)}` : 'no line',
  ],
]

/** One line for each kind of forecast; on a phone each is a block with its figures under one another. */
export function CalibrationTable({
  rows,
  first,
  nameOf,
}: {
  rows: readonly CalibrationRow[]
  first: string
  nameOf: (name: string) => string
}) {
  return (
    <table className={`${page.table} ${css.table}`}>
      <thead>
        <tr>
          <th scope="col">{first}</th>
          {columns.map(([heading]) => (
            <th key={heading} scope="col" className={css.right}>
              {heading}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.name}>
            <th scope="row">{nameOf(row.name)}</th>
            {columns.map(([heading, figureOf]) => (
              <td key={heading} data-heading={heading} className={page.figure}>
                {figureOf(row)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
