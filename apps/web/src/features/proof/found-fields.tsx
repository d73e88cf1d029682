import { type FoundRing, RingCause, RingCondition } from '@glandkeeper/contract/events'
import { useState } from 'react'
import { Disclosure } from './disclosure.tsx'
import { allAlike, foundInShort, withCause, withCondition, without } from './found-rings.ts'
import look from './proof.module.css'

interface FoundFieldsProps {
  found: readonly FoundRing[]
  /** As many as go in; as many came out, unless somebody says otherwise. */
  rings: number | null
  onChange: (found: FoundRing[]) => void
}

/** The old rings in the order they come out: one tap for each, and one more where the rest is alike. */
export function FoundFields({ found, rings, onChange }: FoundFieldsProps) {
  const [chosen, setChosen] = useState<number | null>(null)
  const more = rings === null ? 0 : rings - found.length
  const last = found.at(-1)
  const say = (condition: RingCondition) => {
    onChange(withCondition(found, chosen, condition))
    setChosen(null)
  }
  return (
    <Disclosure words="Old rings that came out" short={foundInShort(found)}>
      {found.length > 0 && (
        <ol className={look.found}>
          {found.map(({ condition, cause }, index) => (
            // Rings have no name but their place.
            // oxlint-disable-next-line react/no-array-index-key -- see above
            <li key={index}>
              <button
                type="button"
                aria-pressed={index === chosen}
                aria-label={`Ring ${index + 1}: ${condition}, change`}
                onClick={() => setChosen(index === chosen ? null : index)}
              >
                <b>{index + 1}</b>
                <span>{condition}</span>
                <span className={look.fate}>{cause}</span>
              </button>
            </li>
          ))}
        </ol>
      )}
      {chosen === null && last && more > 0 && (
        <button type="button" onClick={() => onChange(allAlike(found, found.length + more))}>
          {more === 1 ? 'The last one too' : `The other ${more} too`}: {last.condition}
        </button>
      )}
      <Conditions
        words={chosen === null ? nextInWords(found.length) : `Ring ${chosen + 1} is`}
        chosen={chosen === null ? null : (found[chosen]?.condition ?? null)}
        onChoose={say}
      />
      {chosen !== null && (
        <OneRing
          key={chosen}
          ring={found[chosen]}
          onCause={(cause) => onChange(withCause(found, chosen, cause))}
          onLeaveOut={() => {
            onChange(without(found, chosen))
            setChosen(null)
          }}
        />
      )}
    </Disclosure>
  )
}

function nextInWords(said: number): string {
  return said === 0 ? 'Ring 1, under the follower, is' : `Ring ${said + 1} is`
}

interface ConditionsProps {
  words: string
  chosen: RingCondition | null
  onChoose: (condition: RingCondition) => void
}

function Conditions({ words, chosen, onChoose }: ConditionsProps) {
  return (
    <div role="group" aria-label={words} className={look.conditions}>
      <p>{words}</p>
      {RingCondition.options.map((condition) => (
        <button key={condition} type="button" aria-pressed={condition === chosen} onClick={() => onChoose(condition)}>
          {condition}
        </button>
      ))}
    </div>
  )
}

interface OneRingProps {
  ring: FoundRing | undefined
  onCause: (cause: RingCause | null) => void
  onLeaveOut: () => void
}

/** Of the ring that was chosen: what likely made it so, and the way to take it away. */
function OneRing({ ring, onCause, onLeaveOut }: OneRingProps) {
  return (
    <div className={look.oneRing}>
      <label>
        <span>Likely of</span>
        <select value={ring?.cause ?? ''} onChange={({ target }) => onCause(RingCause.safeParse(target.value).data ?? null)}>
          <option value="">not said</option>
          {RingCause.options.map((cause) => (
            <option key={cause}>{cause}</option>
          ))}
        </select>
      </label>
      <button type="button" onClick={onLeaveOut}>
        No such ring
      </button>
    </div>
  )
}
