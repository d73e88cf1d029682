import type { MonitoringLook } from '@glandkeeper/contract/leak-rules'
import { Link } from 'react-router'
import { formatDay } from '../../platform/site-time.ts'
import page from '../../ui/page.module.css'
import css from './leak-rules.module.css'

/** Nobody is sent to these by a date: when it is safe, by their plan. */
export function UnsafeValves({ looks }: { looks: readonly MonitoringLook[] }) {
  if (looks.length === 0) return null
  return (
    <section className={css.part} aria-labelledby="unsafe">
      <h2 id="unsafe">Unsafe to monitor</h2>
      <p>These have no day: they are looked at when it is safe, by their plan. They do not count in the percentage.</p>
      <table className={`${page.table} ${css.rows}`}>
        <thead>
          <tr>
            <th scope="col">Valve</th>
            <th scope="col">Area</th>
            <th scope="col">Why, and the plan</th>
            <th scope="col">Last looked at</th>
          </tr>
        </thead>
        <tbody>
          {looks.map(({ tag, description, areaCode, note, lastOn }) => (
            <tr key={tag}>
              <th scope="row">
                <Link to={`/valves/${encodeURIComponent(tag)}`} className={css.tag}>
                  {tag}
                </Link>{' '}
                <span className="soft">{description}</span>
              </th>
              <td data-name="area">{areaCode}</td>
              <td data-name="why">{note === '' ? 'no plan on record' : note}</td>
              <td data-name="last">{lastOn === null ? 'never' : formatDay(lastOn)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
