import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { Reading } from '../../ui/reading.tsx'
import { Clocks, SeenGone } from './clocks.tsx'
import { LooksRoute } from './looks-route.tsx'
import { PercentLeaking } from './percent-leaking.tsx'
import { regulatedState } from './queries.ts'
import { UnsafeValves } from './unsafe-valves.tsx'

const A_MONTH = 31

/** How a rule stands today: clocks, percent leaking, whom to look at next. */
export function RegulatedState({ ruleId }: { ruleId: string }) {
  const [lookAhead, setLookAhead] = useState(A_MONTH)
  const known = useQuery(regulatedState(ruleId, lookAhead))
  if (!known.data) return <Reading query={known} things="clocks of this rule" />
  const { leaks, today, percent, looks, unsafe } = known.data
  return (
    <>
      {known.error && (
        <ProblemNote error={known.error} again={{ words: 'Read them again', onPress: () => void known.refetch() }} />
      )}
      <Clocks leaks={leaks} today={today} />
      <PercentLeaking percent={percent} />
      <LooksRoute looks={looks} today={today} lookAhead={lookAhead} isOld={known.isPlaceholderData} onChange={setLookAhead} />
      <UnsafeValves looks={unsafe} />
      <SeenGone leaks={leaks} today={today} />
    </>
  )
}
