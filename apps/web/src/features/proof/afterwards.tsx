import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { FieldEvent } from '@glandkeeper/contract/events'
import type { GlandState } from '@glandkeeper/contract/reserve'
import { formatDay } from '../../platform/site-time.ts'
import look from './proof.module.css'

interface AfterwardsProps {
  card: CutCard | null
  /** As this device knows it: it has the next look once the register has the repack and has told so. */
  state: Pick<GlandState, 'nextLook' | 'packedOn'>
  entries: readonly FieldEvent[]
}

const DECIDES = 'The site procedure decides.'

/** A set settles: what follows a repack, and when. */
export function Afterwards({ card, state: { nextLook, packedOn }, entries }: AfterwardsProps) {
  const [repack] = entries
  const isKnown = packedOn !== null && repack !== undefined && Date.parse(packedOn) >= Date.parse(repack.takenAt)
  return (
    <section className={look.afterwards}>
      <h2>Afterwards</h2>
      {(
        card?.followUp ?? ['A few days after a repack: nuts to the last torque once more, both gaps and the leak written down.']
      ).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <p>
        {isKnown && nextLook ? (
          <>
            Next look by the register: <time dateTime={nextLook.on}>{formatDay(nextLook.on)}</time>, {nextLook.rule}. {DECIDES}
          </>
        ) : (
          `The register sets the day of that look as soon as it has this entry. ${DECIDES}`
        )}
      </p>
    </section>
  )
}
