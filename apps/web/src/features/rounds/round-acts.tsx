import { printRound, type Round } from '@glandkeeper/contract/rounds'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'react-router'
import { TextInput } from '../../ui/field.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { typeInAddress } from '../round-entry/index.tsx'
import { carryQuery, useAddStop, useChangeRound } from './queries.ts'
import { FitterSelect } from './fitter-select.tsx'
import look from './rounds.module.css'

/** What one does with a round beside walking it: carry, print, type in, add a stop, change day and fitter. */
export function RoundActs({ round }: { round: Round }) {
  const me = useMe()
  return (
    <>
      <ToCarry roundId={round.roundId} />
      <p className={look.acts}>
        <a href={printRound.path.replace(':roundId', round.roundId)} target="_blank" rel="noreferrer">
          Round sheet to print
        </a>
        <Link to={typeInAddress(round.roundId)}>Type the paper in</Link>
        <Link to={`/stores/kit?round=${round.roundId}`}>Kit from the store</Link>
      </p>
      <AddStop roundId={round.roundId} />
      {keepsRegister(me) && <ChangeRound round={round} />}
    </>
  )
}

/** Asked of the server: without it the sheet on paper has it too. */
function ToCarry({ roundId }: { roundId: string }) {
  const carry = useQuery(carryQuery(roundId))
  if (!carry.data) return null
  return (
    <section aria-labelledby="carry">
      <h2 id="carry">To carry</h2>
      <ul className={look.carry}>
        {carry.data.lines.map(({ name, says }) => (
          <li key={says}>
            {name !== '' && <b>{name}: </b>}
            {says}
          </li>
        ))}
      </ul>
    </section>
  )
}

/** A valve that was seen on the way: put where it lies best. */
function AddStop({ roundId }: { roundId: string }) {
  const adding = useAddStop(roundId)
  const [isOpen, setIsOpen] = useState(false)
  const [tag, setTag] = useState('')
  if (!isOpen)
    return (
      <button type="button" className={look.wide} onClick={() => setIsOpen(true)}>
        Add a valve to this round
      </button>
    )
  return (
    <form
      className={look.form}
      aria-label="Add a valve to this round"
      onSubmit={(event) => {
        event.preventDefault()
        const wanted = tag.trim()
        if (wanted !== '') adding.mutate(wanted, { onSuccess: () => setTag('') })
      }}
    >
      <TextInput label="Tag" value={tag} onChange={setTag} maxLength={40} />
      {adding.error && <ProblemNote error={adding.error} />}
      {adding.data && tag === '' && <p role="status">Added.</p>}
      <div className={look.acts}>
        <button type="submit" disabled={adding.isPending}>
          Add it
        </button>
        <button type="button" onClick={() => setIsOpen(false)}>
          Done
        </button>
      </div>
    </form>
  )
}

function ChangeRound({ round }: { round: Round }) {
  const changing = useChangeRound(round.roundId)
  const [isOpen, setIsOpen] = useState(false)
  const [walkOn, setWalkOn] = useState(round.walkOn)
  const [fitterId, setFitterId] = useState(round.fitterId ?? '')
  if (!isOpen)
    return (
      <button type="button" className={look.wide} onClick={() => setIsOpen(true)}>
        Change day or fitter
      </button>
    )
  return (
    <form
      className={look.form}
      aria-label="Change day or fitter"
      onSubmit={(event) => {
        event.preventDefault()
        changing.mutate({ walkOn, fitterId: fitterId || null }, { onSuccess: () => setIsOpen(false) })
      }}
    >
      <label>
        Day of the walk
        <input type="date" required value={walkOn} onChange={({ target }) => setWalkOn(target.value)} />
      </label>
      <FitterSelect value={fitterId} onChange={setFitterId} />
      {changing.error && <ProblemNote error={changing.error} />}
      <div className={look.acts}>
        <button type="submit" disabled={changing.isPending}>
          Keep the change
        </button>
        <button type="button" onClick={() => setIsOpen(false)}>
          Leave it
        </button>
      </div>
    </form>
  )
}
