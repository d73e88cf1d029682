import { printOutagePack, VALVES_IN_A_PART } from '@glandkeeper/contract/job-packs'
import type { Outage } from '@glandkeeper/contract/outages'
import { useRef, useState } from 'react'
import { Link } from 'react-router'
import { addressOf } from '../../platform/client.ts'
import { formatDay } from '../../platform/site-time.ts'
import { counted } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { CallOff, EndOutage, SlipOutage } from './outage-acts.tsx'
import { OutageDaysDrawing } from './outage-days.tsx'
import { OutageForm } from './outage-form.tsx'
import css from './repacks.module.css'
import { firstDayInWords, tradesInWords } from './slot-words.ts'

interface OutageRowProps {
  outage: Outage
  /** The list it stands in: all are drawn on one scale. */
  among: readonly Outage[]
  mayChange: boolean
}

/** One outage: when, where, how many hours; its papers; and what may be done with it. */
export function OutageRow({ outage, among, mayChange }: OutageRowProps) {
  const { outageId, name, state, areaCodes, hours } = outage
  return (
    <li className={css.outage}>
      <div className={css.about}>
        <div>
          <h3 className={css.third}>{name}</h3>
          <p>{whenInWords(outage)}</p>
          <p className="soft">
            {areaCodes.length === 0 ? 'The whole site' : `Areas ${areaCodes.join(', ')}`} · {tradesInWords(hours)}
          </p>
          {state === 'planned' && <Planned outage={outage} />}
          {state === 'over' && (
            <p>
              <Link to={`/repacks/outages/${outageId}`}>Look back on {name}</Link>
            </p>
          )}
        </div>
        {state === 'planned' && <OutageDaysDrawing outage={outage} among={among} />}
      </div>
      {mayChange && state === 'planned' && <Acts outage={outage} />}
    </li>
  )
}

function Planned({ outage: { outageId, repacks } }: { outage: Outage }) {
  if (repacks === 0) return <p>The plan in use has no repack in it.</p>
  return (
    <>
      <p className={css.choices}>
        <Link to={`/repacks?slot=outage:${outageId}`}>{counted(repacks, 'repack')} in the plan in use</Link>
        <Link to={`/stores/kit?outage=${outageId}`}>Kit: what to take from the store</Link>
      </p>
      <Packs outageId={outageId} repacks={repacks} />
    </>
  )
}

function whenInWords(outage: Outage): string {
  const { state, startedOn, endedOn, days } = outage
  if (state === 'over' && startedOn !== null && endedOn !== null) return `${formatDay(startedOn)} to ${formatDay(endedOn)}`
  const planned = `from ${firstDayInWords(outage)}, for ${counted(days, 'day')}`
  return state === 'called off' ? `Called off; it was planned ${planned}` : `Likely ${planned}`
}

/** A pack of papers for each boundary, in parts that a printer and a person can handle. */
function Packs({ outageId, repacks }: { outageId: string; repacks: number }) {
  const parts = Array.from({ length: Math.ceil(repacks / VALVES_IN_A_PART) }, (_, index) => String(index + 1))
  return (
    <p className={css.choices}>
      {parts.map((part, index) => (
        <a
          key={part}
          href={addressOf(printOutagePack, { params: { outageId }, query: { part } })}
          target="_blank"
          rel="noreferrer"
        >
          {parts.length === 1 ? 'Job packs to print (PDF)' : `${index === 0 ? 'Job packs (PDF), part' : 'part'} ${part}`}
        </a>
      ))}
    </p>
  )
}

type Act = 'slip' | 'change' | 'end' | 'call off'
const actWords: Readonly<Record<Act, string>> = {
  slip: 'It comes later',
  change: 'Change',
  end: 'It is over',
  'call off': 'Call off',
}

function Acts({ outage }: { outage: Outage }) {
  const [act, setAct] = useState<Act | null>(null)
  const opener = useRef<HTMLButtonElement>(null)
  const close = () => {
    // What had the focus goes away: the keyboard goes on at the first button of the outage.
    opener.current?.focus()
    setAct(null)
  }
  return (
    <>
      <div className={page.acts}>
        {(['slip', 'change', 'end', 'call off'] as const).map((one, index) => (
          <button
            key={one}
            type="button"
            ref={index === 0 ? opener : undefined}
            className={css.quiet}
            aria-expanded={act === one}
            aria-label={`${actWords[one]}: ${outage.name}`}
            onClick={() => (act === one ? setAct(null) : setAct(one))}
          >
            {actWords[one]}
          </button>
        ))}
      </div>
      {act === 'slip' && <SlipOutage outage={outage} onDone={close} />}
      {act === 'change' && <OutageForm outage={outage} onDone={close} />}
      {act === 'end' && <EndOutage outage={outage} onDone={close} />}
      {act === 'call off' && <CallOff outage={outage} onDone={close} />}
    </>
  )
}
