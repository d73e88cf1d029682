import type { Calculator } from '@glandkeeper/bench/calculator'
import { sourceOf } from '@glandkeeper/engines/sources'
import css from './bench.module.css'

/** The formula, what it holds for, and where it comes from: a click away, never hidden deeper. */
export function WhereFrom({ calculator }: { calculator: Calculator }) {
  return (
    <details className={css.whereFrom}>
      <summary>Formula, limits and sources</summary>
      <pre className={css.formula}>{calculator.formula.join('\n')}</pre>
      <p>{calculator.limits}</p>
      <ul>
        {calculator.sources.map((id) => {
          const source = sourceOf(id)
          return (
            <li key={id}>
              <b>{source.what}</b>: {source.source}. <span className="soft">Mark: {source.mark}.</span>
            </li>
          )
        })}
      </ul>
    </details>
  )
}
