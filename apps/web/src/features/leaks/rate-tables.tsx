import { AgeBand } from '@glandkeeper/contract/leaks'
import type { LeakRateRow, LeakStudy } from '@glandkeeper/contract/leak-study'
import { useQuery } from '@tanstack/react-query'
import { formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { siteAreas } from '../register/queries.ts'
import type { LeakChange } from './leak-address.ts'
import { LeakCount } from './leak-links.tsx'
import css from './leaks.module.css'
import { RateMark } from './rate-mark.tsx'
import { topOfRates } from './rate-scale.ts'
import { meanInWords, periodWords, rateWithLimits } from './study-words.ts'

/** Leaks against the time watched, by what may lie behind them, all to one scale. */
export function RateTables({ study }: { study: LeakStudy }) {
  const areas = useQuery(siteAreas).data?.areas ?? []
  const { overall, byService, byFamily, byArea, byAge, period } = study
  const top = topOfRates([overall, ...byService, ...byFamily, ...byArea, ...byAge])
  const areaName = (name: string) => areas.find(({ code }) => code === name)?.name ?? name
  return (
    <section className={css.part} aria-labelledby="rates">
      <h2 id="rates">How often valves leak</h2>
      <p>
        Leaks in 1,000 valve-months of watch: a thousand valves for a month, or a hundred for ten. Dot: the rate; line: limits
        that hold 95 times in 100; thin upright: all valves together, {rateWithLimits(overall)}. All drawn to one scale.
        {period !== 'all' &&
          ` Counted over ${periodWords[period]}; a number of leaks leads to a list that holds the older ones too.`}
      </p>
      <RateTable rows={byService} {...{ top, overall }} heading="Service" filterOf={({ name }) => ({ service: name })} />
      <RateTable rows={byFamily} {...{ top, overall }} heading="Packing" filterOf={({ name }) => ({ family: name })} />
      <RateTable rows={byArea} {...{ top, overall }} heading="Area" filterOf={({ name }) => ({ area: name })} nameOf={areaName} />
      <RateTable rows={byAge} {...{ top, overall }} heading="Age of the packing" filterOf={ageFilter} />
    </section>
  )
}

function ageFilter({ name }: LeakRateRow): LeakChange | null {
  const age = AgeBand.safeParse(name).data
  return age === undefined ? null : { age }
}

interface RateTableProps {
  rows: readonly LeakRateRow[]
  heading: string
  top: number
  overall: LeakRateRow
  filterOf: (row: LeakRateRow) => LeakChange | null
  nameOf?: (name: string) => string
}

const asGiven = (name: string) => name

const figures = ['Leaks', 'Valves', 'Valve-months', 'Nips in a dry month'] as const

function RateTable({ rows, heading, top, overall, filterOf, nameOf = asGiven }: RateTableProps) {
  if (rows.length === 0) return null
  return (
    <table className={`${page.table} ${css.table} ${css.stacked} ${css.rates}`}>
      <thead>
        <tr>
          <th scope="col">{heading}</th>
          <th scope="col">Leaks in 1,000 valve-months</th>
          {figures.map((figure) => (
            <th key={figure} scope="col" className={css.right}>
              {figure}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.name}>
            <th scope="row">{nameOf(row.name)}</th>
            <td className={css.rate}>
              <RateMark rate={row} top={top} overall={overall.rate} />
              <span>{rateWithLimits(row)}</span>
            </td>
            <td data-name="Leaks" className={page.figure}>
              <LeakCount leaks={row.leaks} filters={filterOf(row)} of={nameOf(row.name)} />
            </td>
            <td data-name="Valves" className={page.figure}>
              {formatCount(row.valves)}
            </td>
            <td data-name="Valve-months" className={page.figure}>
              {formatCount(Math.round(row.months))}
            </td>
            <td data-name="Nips in a dry month" className={page.figure}>
              {row.nipsPerDryMonth === null ? 'not known' : meanInWords(row.nipsPerDryMonth)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
