import { type FieldEvent, sendEvents } from '@glandkeeper/contract/events'
import type { Problem } from '@glandkeeper/contract/problem'
import type { Finding } from '@glandkeeper/contract/reserve'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'
import { valveQuery } from '../valves/queries.ts'

export interface Delivery {
  readonly kept: readonly FieldEvent[]
  readonly refused: readonly Problem[]
  readonly findings: readonly Finding[]
}

const LONGEST_WAIT = 15_000

/** The one way entries leave the device. Throws when nobody answered; the same entries may be sent again. */
async function deliver(entries: readonly FieldEvent[]): Promise<Delivery> {
  const { outcomes } = await call(sendEvents, { body: { events: [...entries] }, signal: AbortSignal.timeout(LONGEST_WAIT) })
  const refusedIds = new Set(outcomes.flatMap((outcome) => (outcome.outcome === 'refused' ? [outcome.id] : [])))
  return {
    kept: entries.filter(({ id }) => !refusedIds.has(id)),
    refused: outcomes.flatMap((outcome) => (outcome.outcome === 'refused' ? [outcome.problem] : [])),
    findings: saidOnce(outcomes.flatMap((outcome) => (outcome.outcome === 'accepted' ? outcome.findings : []))),
  }
}

/** A nip and the reading after it may both bring the same finding. */
function saidOnce(findings: readonly Finding[]): Finding[] {
  return [...new Map(findings.map((finding) => [finding.detail, finding])).values()]
}

/** Sends entries and has valve and board read anew. A device without a network is told so at once, not kept waiting. */
export function useDelivery(tag: string) {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: deliver,
    networkMode: 'always',
    onSuccess: () => {
      void queries.invalidateQueries({ queryKey: valveQuery(tag).queryKey })
      void queries.invalidateQueries({ queryKey: ['board'] })
    },
  })
}
