import type { CalendarAddress } from '@glandkeeper/contract/calendars'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { formatMoment } from '../../platform/site-time.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { useMe } from '../people/index.tsx'
import css from './calendar-addresses.module.css'
import { type CrewOfCalendar, MakeAddress } from './make-address.tsx'
import { calendarAddresses, useRetireAddress } from './queries.ts'

/** Addresses under which calendar programs read the rounds: which there are, a new one, and an end to one. For who keeps the register. */
export function CalendarAddresses({ crews }: { crews: readonly CrewOfCalendar[] }) {
  const known = useQuery(calendarAddresses)
  return (
    <section className={css.section} aria-labelledby="calendar-addresses">
      <h2 id="calendar-addresses">Rounds in a calendar</h2>
      <p>
        A calendar program that is given one of these addresses shows the rounds of the site or of a crew, and keeps up with them
        by itself. It needs no sign-in.
      </p>
      <MakeAddress crews={crews} />
      {known.data ? (
        <AddressTable addresses={known.data.addresses} />
      ) : known.error ? (
        <ProblemNote error={known.error} again={{ words: 'Read the addresses again', onPress: () => void known.refetch() }} />
      ) : (
        <p role="status">Reading the addresses</p>
      )}
    </section>
  )
}

function AddressTable({ addresses }: { addresses: readonly CalendarAddress[] }) {
  if (addresses.length === 0) return <p className="soft">No address yet.</p>
  return (
    <table className={`${page.table} ${css.addresses}`}>
      <thead>
        <tr>
          <th scope="col">Rounds of</th>
          <th scope="col">Made</th>
          <th scope="col">To end it</th>
        </tr>
      </thead>
      <tbody>
        {addresses.map((address) => (
          <AddressRow key={address.addressId} address={address} />
        ))}
      </tbody>
    </table>
  )
}

function AddressRow({ address: { addressId, crewName, madeBy, madeAt } }: { address: CalendarAddress }) {
  const { timeZone } = useMe().site
  const [isAsked, setIsAsked] = useState(false)
  const retire = useRetireAddress()
  const whose = crewName ?? 'the site'
  const made = formatMoment(madeAt, timeZone)
  return (
    <tr>
      <th scope="row">{whose}</th>
      <td>
        <time dateTime={madeAt}>{made}</time> by {madeBy}
      </td>
      <td>
        {isAsked ? (
          <div className={css.asked}>
            <p>Calendars that use it get nothing more.</p>
            <div className={page.acts}>
              <button type="button" className="main" disabled={retire.isPending} onClick={() => retire.mutate(addressId)}>
                Retire this address
              </button>
              <button type="button" onClick={() => setIsAsked(false)}>
                Keep it
              </button>
            </div>
            {retire.error && <ProblemNote error={retire.error} />}
          </div>
        ) : (
          <button type="button" aria-label={`Retire the address of ${whose}, made ${made}`} onClick={() => setIsAsked(true)}>
            Retire
          </button>
        )}
      </td>
    </tr>
  )
}
