import type { NextLook } from '@glandkeeper/contract/reserve'
import { formatDay } from '../../platform/site-time.ts'
import { asSentence } from '../../ui/sentence.ts'
import look from './valve-page.module.css'

/** When to look again and which rule says so; what else was weighed, for who asks. */
export function NextLookLine({ nextLook, today }: { nextLook: NextLook; today: string }) {
  const { on, rule, because, weighed } = nextLook
  const others = weighed.filter((other) => other.rule !== rule).toSorted((one, other) => one.on.localeCompare(other.on))
  const words = on < today ? 'A look was due on' : on === today ? 'Look today,' : 'Next look'
  return (
    <div className={look.look}>
      <p>
        <b>
          {words} <time dateTime={on}>{formatDay(on)}</time>.
        </b>{' '}
        {asSentence(because)}
      </p>
      {others.length > 0 && (
        <details>
          <summary>What else was weighed</summary>
          <ul>
            {others.map((other) => (
              <li key={other.rule}>
                {other.rule}: <time dateTime={other.on}>{formatDay(other.on)}</time>
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}
