import type { Outage } from '@glandkeeper/contract/outages'
import { type SubmitEvent, useState } from 'react'
import { TextInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { figureOf } from '../readings/index.ts'
import { slipped } from './outage-draft.ts'
import { useCallOffOutage, useEndOutage, useSaveOutage } from './queries.ts'
import css from './repacks.module.css'
import { firstDayInWords } from './slot-words.ts'

interface ActProps {
  outage: Outage
  onDone: () => void
}

const MOST_WEEKS = 104

/** All three days move by whole weeks; the new ones are said before they are saved. */
export function SlipOutage({ outage, onDone }: ActProps) {
  const [typed, setTyped] = useState('1')
  const save = useSaveOutage(outage)
  const weeks = figureOf(typed)
  const isMove = weeks !== null && Number.isInteger(weeks) && weeks !== 0 && Math.abs(weeks) <= MOST_WEEKS
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    if (isMove) save.mutate(slipped(outage, weeks), { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={`Move the days of ${outage.name}`}>
      <TextInput
        label="Weeks later"
        hint="below nought: earlier"
        isFigure
        inputMode="text"
        value={typed}
        onChange={setTyped}
        fault={isMove ? undefined : `A whole number of weeks, at most ${MOST_WEEKS}, and not nought`}
      />
      {isMove && (
        <p role="status">
          Then likely from {firstDayInWords(slipped(outage, weeks))}. Plans that are made keep the days they were made with: ask
          what if first, or plan again after.
        </p>
      )}
      {save.error && <ProblemNote error={save.error} />}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={save.isPending || !isMove}>
          Move its days
        </button>
        <button type="button" onClick={onDone}>
          Leave them
        </button>
      </div>
    </form>
  )
}

/** When it really was. From then on there is a review of it. */
export function EndOutage({ outage, onDone }: ActProps) {
  const [startedOn, setStartedOn] = useState(outage.likelyOn)
  const [endedOn, setEndedOn] = useState('')
  const end = useEndOutage(outage)
  const fault = endedOn !== '' && endedOn < startedOn ? 'The last day is before the first' : undefined
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    end.mutate({ startedOn, endedOn }, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={`When ${outage.name} really was`}>
      <div className={css.fields}>
        <TextInput label="First day, as it came" type="date" value={startedOn} onChange={setStartedOn} />
        <TextInput label="Last day, as it came" type="date" value={endedOn} onChange={setEndedOn} fault={fault} />
      </div>
      {end.error && <ProblemNote error={end.error} />}
      <div className={page.acts}>
        <button
          type="submit"
          className="main"
          disabled={end.isPending || startedOn === '' || endedOn === '' || fault !== undefined}
        >
          Put down that it is over
        </button>
        <button type="button" onClick={onDone}>
          It is not over
        </button>
      </div>
    </form>
  )
}

/** Says what follows, and asks once. */
export function CallOff({ outage, onDone }: ActProps) {
  const callOff = useCallOffOutage(outage)
  return (
    <div className={css.form} role="group" aria-label={`Call off ${outage.name}`}>
      <p>
        Its repacks have no slot then: plan again. An outage that was called off stays in the list; if it comes after all, put
        down another one.
      </p>
      {callOff.error && <ProblemNote error={callOff.error} />}
      <div className={page.acts}>
        <button
          type="button"
          className="main"
          disabled={callOff.isPending}
          onClick={() => callOff.mutate(undefined, { onSuccess: onDone })}
        >
          Call it off
        </button>
        <button type="button" onClick={onDone}>
          Keep it
        </button>
      </div>
    </div>
  )
}
