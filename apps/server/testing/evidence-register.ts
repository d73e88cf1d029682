import { addArea } from '@glandkeeper/contract/areas'
import type { Evidence, EvidencePayload, EvidenceScope } from '@glandkeeper/contract/evidence'
import { exportEvidence } from '@glandkeeper/contract/evidence'
import { sendEvents } from '@glandkeeper/contract/events'
import { aCorrection, aLeak, aReading } from '@glandkeeper/fixtures/a-reading'
import { aServer, type TestServer } from './a-server.ts'
import { add } from './valves-alike.ts'

/** Two valves in two areas: three readings of BH-1 in April, the second taken back in May, and a leak at TF-1. */
export async function anEvidenceRegister() {
  const server = await aServer()
  await server.expectOk('planner', addArea, { body: { code: 'TF', name: 'Tank farm', walkPosition: 20, level: 0 } })
  const { valveId } = await add(server, { tag: 'BH-1' })
  const other = await add(server, { tag: 'TF-1', areaCode: 'TF' })
  const readings = [1, 2, 3].map((day) =>
    aReading({ valveId, takenAt: `2026-04-0${day}T08:00:00+01:00`, gapLeft: 9, gapRight: 9 - day / 10 }),
  )
  const correction = aCorrection({
    valveId,
    takenAt: '2026-05-02T08:00:00Z',
    corrects: readings[1]?.id ?? '',
    reason: 'wrong gland',
  })
  const leak = aLeak({ valveId: other.valveId, takenAt: '2026-04-02T23:30:00Z', note: '=cmd|calc', takenBy: 'J. Marsh' })
  await server.expectOk('fitter', sendEvents, { body: { events: [...readings, leak, correction] } })
  return { server, readings, correction, leak }
}

/** The signed export of one valve, or what else is asked for. */
export function exported(server: TestServer, query: EvidenceScope = { tag: 'BH-1' }): Promise<Evidence> {
  return server.expectOk('engineer', exportEvidence, { query })
}

export const payloadOf = ({ payload }: Evidence) => JSON.parse(payload) as EvidencePayload
