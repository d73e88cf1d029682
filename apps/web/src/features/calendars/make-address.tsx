import { useState } from 'react'
import { ChoiceInput } from '../../ui/field.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import css from './calendar-addresses.module.css'
import { useMakeAddress } from './queries.ts'

export interface CrewOfCalendar {
  readonly crewId: string
  readonly name: string
}

const THE_SITE = 'the site'

/** Makes an address and shows it, the one time that it can be shown. */
export function MakeAddress({ crews }: { crews: readonly CrewOfCalendar[] }) {
  const [whose, setWhose] = useState(THE_SITE)
  const make = useMakeAddress()
  if (make.data)
    return (
      <NewAddress
        address={new URL(make.data.path, window.location.origin).href}
        whose={make.data.crewName ?? THE_SITE}
        onDone={make.reset}
      />
    )
  return (
    <div className={css.make}>
      <ChoiceInput
        label="Rounds of"
        value={whose}
        onChange={setWhose}
        choices={[{ value: THE_SITE, words: THE_SITE }, ...crews.map(({ crewId, name }) => ({ value: crewId, words: name }))]}
      />
      {make.error && <ProblemNote error={make.error} />}
      <button
        type="button"
        className="main"
        disabled={make.isPending}
        onClick={() => make.mutate(whose === THE_SITE ? null : whose)}
      >
        Make an address
      </button>
    </div>
  )
}

function NewAddress({ address, whose, onDone }: { address: string; whose: string; onDone: () => void }) {
  const [state, setState] = useState<'not yet' | 'copied' | 'by hand'>('not yet')
  const copy = () => {
    // Undefined on a page that is not served safely.
    const clipboard = navigator.clipboard as Clipboard | undefined
    if (clipboard === undefined) setState('by hand')
    else
      clipboard.writeText(address).then(
        () => setState('copied'),
        () => setState('by hand'),
      )
  }
  return (
    <div className={css.made}>
      <p>
        The address for the rounds of {whose}. It is shown this once: give it to the calendar program now, as a calendar to
        subscribe to.
      </p>
      <code className={css.address}>{address}</code>
      <p>
        <b>Whoever has this address can read the rounds.</b> Retire it when it has come into the wrong hands.
      </p>
      <div className={css.acts}>
        <button type="button" className="main" onClick={copy}>
          Copy the address
        </button>
        <button type="button" onClick={onDone}>
          It is in the calendar
        </button>
        <span role="status">
          {state === 'copied' && 'copied'}
          {state === 'by hand' && 'This page may not copy: mark the address and copy it by hand.'}
        </span>
      </div>
    </div>
  )
}
