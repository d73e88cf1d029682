import { useQuery } from '@tanstack/react-query'
import { type ReactNode, useEffect, useRef } from 'react'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keptPlans, planningNow, useCancelPlanning, useMakePlan } from './queries.ts'
import css from './repacks.module.css'

/** Starts a plan, and leads to it when it is there. Plans of others that are ready meanwhile show in the list only. */
export function usePlanning(onReady: (planId: string) => void) {
  const planning = useQuery(planningNow)
  const { refetch } = useQuery(keptPlans)
  const making = useMakePlan()
  const cancelling = useCancelPlanning()
  /** The last plan before this page asked for one; undefined while it has not asked. */
  const before = useRef<string | null | undefined>(undefined)
  const seen = useRef<string | null | undefined>(undefined)
  const share = planning.data?.share ?? null
  const planId = planning.data?.planId
  useEffect(() => {
    if (seen.current !== undefined && planId !== undefined && seen.current !== planId) void refetch()
    seen.current = planId
  }, [planId, refetch])
  useEffect(() => {
    if (before.current === undefined || share !== null || !planId || planId === before.current) return
    before.current = undefined
    onReady(planId)
  }, [share, planId, onReady])
  const forget = () => {
    before.current = undefined
  }
  const ask = (body: Parameters<typeof making.mutate>[0]) => {
    before.current = planId ?? null
    making.mutate(body, { onError: forget })
  }
  return {
    share,
    fault: planning.data?.fault ?? null,
    error: making.error ?? cancelling.error,
    isAsking: making.isPending || cancelling.isPending || !planning.data,
    ask,
    stop: () => cancelling.mutate(undefined, { onSuccess: forget }),
  }
}

/** The form; while something is planned how far that is, with a way to stop it. */
export function PlanningOr({ planning, children }: { planning: ReturnType<typeof usePlanning>; children: ReactNode }) {
  const { share, error, fault, isAsking, stop } = planning
  return (
    <>
      {share !== null && (
        <div className={css.progress} role="status">
          <span>Planning, {Math.round(share * 100)}&nbsp;%</span>
          <progress value={share} aria-label="Planning" />
          <button type="button" disabled={isAsking} onClick={stop}>
            Stop planning
          </button>
        </div>
      )}
      {share === null && fault !== null && (
        <p role="alert" className={css.fault}>
          {fault}
        </p>
      )}
      {error && <ProblemNote error={error} />}
      {/* Hidden and not gone: what was typed is still there after a stop or a fault. */}
      <div hidden={share !== null}>{children}</div>
    </>
  )
}
