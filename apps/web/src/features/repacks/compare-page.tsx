import type { RepackDifference, RepackSlot } from '@glandkeeper/contract/repack-plans'
import { useQuery } from '@tanstack/react-query'
import { Link, useSearchParams } from 'react-router'
import { counted, formatCount } from '../../ui/count.ts'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { capital } from '../../ui/sentence.ts'
import { ChanceMark } from './chance-mark.tsx'
import { planById, plansCompared } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import css from './repacks.module.css'
import { slotNamed } from './slot-words.ts'
import { TotalsTable } from './totals-table.tsx'

/** Two plans side by side, and the valves that are elsewhere. */
export function ComparePage() {
  const [address] = useSearchParams()
  const [one, other] = [address.get('one'), address.get('other')]
  return (
    <main className={page.page}>
      <title>Two plans of repacks · Glandkeeper</title>
      <div className={page.title}>
        <h1>Two plans of repacks</h1>
        <Link to="/repacks">Back to repacks</Link>
      </div>
      {one && other ? (
        <Compared one={one} other={other} />
      ) : (
        <Empty title="No two plans are chosen">Choose them below the plan, where those that are kept are listed.</Empty>
      )}
    </main>
  )
}

function Compared({ one, other }: { one: string; other: string }) {
  const compared = useQuery(plansCompared(one, other))
  const [slots, otherSlots] = [useQuery(planById(one)), useQuery(planById(other))]
  if (!compared.data) return <Reading query={compared} things="two plans" />
  const { differences, differenceCount, same, one: first, other: second } = compared.data
  // Each plan names its slots; what both have is named alike.
  const named = [...(slots.data?.slots ?? []), ...(otherSlots.data?.slots ?? [])]
  const columns = [first, second].map(({ name, totals, objective }) => ({ name, totals, objective }))
  return (
    <>
      <section className={css.part} aria-labelledby="totals">
        <h2 id="totals">What each comes to</h2>
        <TotalsTable caption="Small: how far the second is from the first." columns={columns} />
      </section>
      <section className={css.part} aria-labelledby="differences">
        <h2 id="differences">Where they differ</h2>
        <p>
          {counted(differenceCount, 'valve is', 'valves are')} elsewhere, {counted(same, 'valve is', 'valves are')} in the same
          slot in both. On top, those whose chance of running out grows most from the first plan to the second.
        </p>
        {differences.length > 0 && <Differences {...{ differences, named }} names={[first.name, second.name]} />}
        {differenceCount > differences.length && (
          <p className="soft">And {formatCount(differenceCount - differences.length)} more.</p>
        )}
      </section>
    </>
  )
}

interface DifferencesProps {
  differences: readonly RepackDifference[]
  named: readonly RepackSlot[]
  names: readonly [string, string]
}

function Differences({ differences, named, names }: DifferencesProps) {
  return (
    <table className={`${page.table} ${css.rows}`}>
      <thead>
        <tr>
          <th scope="col">Valve</th>
          <th scope="col">In the first, {names[0]}</th>
          <th scope="col">In the second, {names[1]}</th>
        </tr>
      </thead>
      <tbody>
        {differences.map(({ tag, areaCode, one, other }) => (
          <tr key={tag}>
            <th scope="row">
              <Link to={`/valves/${encodeURIComponent(tag)}`} className={css.tag}>
                {tag}
              </Link>{' '}
              <span className={`soft ${css.plain}`}>{areaCode}</span>
            </th>
            <Place place={one} name="in the first" named={named} />
            <Place place={other} name="in the second" named={named} />
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Place({ place, name, named }: { place: RepackDifference['one']; name: string; named: readonly RepackSlot[] }) {
  if (place === null) return <td data-name={name}>not in this plan</td>
  return (
    <td data-name={name}>
      <ChanceMark chance={place.chanceOut} />
      <span className={`soft ${css.line}`}>{place.slotId === null ? 'Waits' : capital(slotNamed(named, place.slotId))}</span>
    </td>
  )
}
