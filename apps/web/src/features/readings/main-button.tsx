import type { ValveCard } from '@glandkeeper/contract/pocket'
import { type Draft, isRead, isTurned, turnedOf } from './draft.ts'
import { actInWords } from './draft-words.ts'
import { isSpent, leavesInWords, offersHalfTurn } from './leaves.ts'
import look from './pad.module.css'

interface MainButtonProps {
  draft: Draft
  history: ValveCard
  onPress: () => void
}

/** Says what it will save, and saves it with one tap. */
export function MainButton({ draft, history, onPress }: MainButtonProps) {
  return (
    <>
      {draft.kind === 'turns, gap, leak' && !offersHalfTurn(history) && (
        <p className={look.spent}>
          {isSpent(history.state) ? 'No travel left' : 'Less than half a turn left'}: report for repack.
        </p>
      )}
      <button type="button" className={`main ${look.main}`} onClick={onPress}>
        {actInWords(draft)}
        <small>{consequence(draft, history)}</small>
      </button>
    </>
  )
}

function consequence(draft: Draft, history: ValveCard): string {
  if (draft.kind !== 'turns, gap, leak') return 'save it'
  const leaves = leavesInWords(history, turnedOf(draft), draft)
  if (isTurned(draft)) return `${leaves} · quarter turns, nuts in turn`
  return isRead(draft) ? leaves : 'save it'
}
