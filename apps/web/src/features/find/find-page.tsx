import type { ValveCard } from '@glandkeeper/contract/pocket'
import { useQuery } from '@tanstack/react-query'
import { lazy, Suspense, useCallback, useState } from 'react'
import { Link, useNavigate } from 'react-router'
import { TextInput } from '../../ui/field.tsx'
import { StandingMark } from '../../ui/standing.tsx'
import { carriedQuery } from '../pocket/queries.ts'
import { findByTag, nearInTheWalk } from './near.ts'
import { tagInCode } from './tag-in-code.ts'
import look from './find.module.css'

const Scanner = lazy(async () => ({ default: (await import('./scanner.tsx')).Scanner }))

/** From a label, or a part of a tag, to the valve: with what this device carries. */
export function FindPage() {
  const carried = useQuery(carriedQuery)
  const navigate = useNavigate()
  const [typed, setTyped] = useState('')
  const [isScanning, setIsScanning] = useState(false)
  const [said, setSaid] = useState<string | null>(null)
  const cards = carried.data ?? []
  const found = findByTag(cards, typed)
  const [best] = found
  const onCode = useCallback(
    (text: string) => {
      const tag = tagInCode(text)
      setIsScanning(false)
      if (tag === null) setSaid('This code is not one of our labels.')
      else void navigate(`/valves/${encodeURIComponent(tag)}/log`)
    },
    [navigate],
  )
  return (
    <main className={look.page}>
      <title>Find a valve · Glandkeeper</title>
      <h1>Find a valve</h1>
      {isScanning ? (
        <Suspense fallback={<p role="status">Opening the camera</p>}>
          <Scanner onCode={onCode} />
        </Suspense>
      ) : (
        <button type="button" className={`main ${look.scan}`} onClick={() => setIsScanning(true)}>
          Scan a label
        </button>
      )}
      {said !== null && <p role="alert">{said}</p>}
      <TextInput label="Part of a tag" value={typed} onChange={setTyped} inputMode="search" autoComplete="off" />
      <p className="soft">{cards.length} valves are on this device.</p>
      <ValveList title="Found" cards={found} />
      {typed.trim() !== '' && found.length === 0 && <p>No valve on this device has this in its tag.</p>}
      {best && found.length <= 3 && (
        <ValveList title={`Near ${best.valve.tag} in the walk`} cards={nearInTheWalk(cards, best.valve.tag)} />
      )}
    </main>
  )
}

function ValveList({ title, cards }: { title: string; cards: readonly ValveCard[] }) {
  if (cards.length === 0) return null
  return (
    <section>
      <h2>{title}</h2>
      <ul className={look.list}>
        {cards.map(({ valve, state }) => (
          <li key={valve.valveId}>
            <Link to={`/valves/${encodeURIComponent(valve.tag)}/log`}>
              <b>{valve.tag}</b>
              <StandingMark standing={state.standing} />
              <span>
                {valve.description} · {valve.areaName}, level {valve.level}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  )
}
