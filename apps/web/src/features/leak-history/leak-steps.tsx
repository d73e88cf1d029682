import type { LeakStep } from '@glandkeeper/contract/leaks'
import { formatMoment } from '../../platform/site-time.ts'
import { PhotoStrip } from '../photos/index.tsx'
import { laterInWords, stepWords } from './history-words.ts'
import css from './leak-history.module.css'
import { StepMark } from './step-mark.tsx'

interface LeakStepsProps {
  steps: readonly LeakStep[]
  /** Pictures by the entry they belong to. */
  photos: ReadonlyMap<string, readonly string[]>
  timeZone: string
}

/** From the first sighting to the look that saw it gone: what happened, when, and who did it. */
export function LeakSteps({ steps, photos, timeZone }: LeakStepsProps) {
  return (
    <ol className={css.steps}>
      {steps.map((step, place) => {
        const before = steps[place - 1]
        const pictures = photos.get(step.entryId) ?? []
        return (
          <li key={step.entryId}>
            <p className={css.stepHead}>
              <StepMark what={step.what} />
              <b>{stepWords[step.what]}</b>
              {before && <span className="soft">{laterInWords(before.at, step.at)}</span>}
            </p>
            <p>
              <time dateTime={step.at}>{formatMoment(step.at, timeZone)}</time> {step.says}{' '}
              <span className="soft">{step.by}</span>
            </p>
            {pictures.length > 0 && <PhotoStrip digests={pictures} alt={`Photo of ${formatMoment(step.at, timeZone)}`} />}
          </li>
        )
      })}
    </ol>
  )
}
