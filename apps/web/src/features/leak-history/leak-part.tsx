import type { LeakHistory } from '@glandkeeper/contract/leaks'
import { leakStateInWords } from '@glandkeeper/drawings/leak-words'
import { format } from 'date-fns'
import { useEffect, useRef } from 'react'
import { Link } from 'react-router'
import { atSite, formatDay } from '../../platform/site-time.ts'
import { capital } from '../../ui/sentence.ts'
import { Before } from './before-leak.tsx'
import { stoodInWords, worstInWords } from './history-words.ts'
import css from './leak-history.module.css'
import { LeakSteps } from './leak-steps.tsx'

interface LeakPartProps {
  leak: LeakHistory['leaks'][number]
  /** 1 is the first leak of the valve. */
  number: number
  photos: ReadonlyMap<string, readonly string[]>
  isShown: boolean
  now: Date
  timeZone: string
}

/** One leak: how it went, how it stands, and what was before it. */
export function LeakPart({ leak, number, photos, isShown, now, timeZone }: LeakPartProps) {
  const part = useRef<HTMLElement>(null)
  useEffect(() => {
    if (!isShown) return
    part.current?.focus({ preventScroll: true })
    part.current?.scrollIntoView()
  }, [isShown])
  const { leakId, openedAt, state, isDeferred, deferredUntil } = leak
  const headingId = `heading-${leakId}`
  return (
    <article
      ref={part}
      id={leakId}
      tabIndex={-1}
      aria-labelledby={headingId}
      className={isShown ? `${css.leak} ${css.shown}` : css.leak}
    >
      <header className={css.leakHead}>
        <h3 id={headingId}>
          <Link to={`#${leakId}`} preventScrollReset>
            Leak {number}, <time dateTime={openedAt}>{format(atSite(new Date(openedAt), timeZone), 'd MMM yyyy')}</time>
          </Link>
        </h3>
        <span>at worst {worstInWords(leak)}</span>
        <span className={state === 'open' ? 'hot' : undefined}>{capital(leakStateInWords(leak))}</span>
        <span className="soft">{stoodInWords(leak, now)}</span>
        {isDeferred && <span>{deferredUntil === null ? 'put off' : `put off until ${formatDay(deferredUntil)}`}</span>}
      </header>
      <LeakSteps steps={leak.steps} photos={photos} timeZone={timeZone} />
      <Before before={leak.before} timeZone={timeZone} />
    </article>
  )
}
