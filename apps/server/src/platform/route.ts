import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import type { BodyOf, Endpoint, OkIn, ParamsOf, QueryOf } from '@glandkeeper/contract/endpoint'
import { MOST_BYTES_OF_EVIDENCE } from '@glandkeeper/contract/evidence'
import { type Fault, faultsOf } from '@glandkeeper/contract/problem'
import type { z } from 'zod'
import { admit, refuseForeignOrigin, type SignedIn } from './auth.ts'
import type { Clock } from './clock.ts'
import { Refusal } from './problem.ts'
import type { Store } from './store.ts'

/** What every feature is given. */
export interface Platform {
  readonly store: Store
  readonly clock: Clock
}

export interface Call<E extends Endpoint> {
  readonly params: ParamsOf<E>
  readonly query: QueryOf<E>
  readonly body: BodyOf<E>
  readonly me: E['who'] extends 'anyone' ? null : SignedIn
  readonly request: FastifyRequest
  readonly reply: FastifyReply
}

const contentTypes = {
  csv: 'text/csv; charset=utf-8',
  calendar: 'text/calendar; charset=utf-8',
  pdf: 'application/pdf',
  jpeg: 'image/jpeg',
} as const

/** A body of files may be this large; JSON is held to the limit of the server. */
const mostBytes = { csv: 64 * 1024 * 1024, files: 4 * 1024 * 1024, evidence: MOST_BYTES_OF_EVIDENCE } as const

/**
 * Registers one endpoint of the contract: who may call, what comes in, what goes out.
 * All parts of a request are judged before it is refused, so that every fault is named at once.
 */
export function route<const E extends Endpoint>(
  app: FastifyInstance,
  platform: Platform,
  endpoint: E,
  handle: (call: Call<E>) => Promise<OkIn<E>>,
): void {
  app.route({
    method: endpoint.method,
    url: endpoint.path,
    ...(endpoint.bodyKind && { bodyLimit: mostBytes[endpoint.bodyKind] }),
    // Whoever has the address of a calendar can read it: the log does not.
    ...(endpoint.okKind === 'calendar' && {
      logSerializers: { req: ({ method }: FastifyRequest) => ({ method, url: endpoint.path }) },
    }),
    // Before the body is read: a stranger's body is not worth the memory.
    onRequest: async (request) => {
      refuseForeignOrigin(request)
      request.signedIn = await admit(platform.store.read, request, endpoint.who, platform.clock)
    },
    handler: async (request, reply) => {
      refuseOtherKind(endpoint, request)
      const input = inputOf(endpoint, request)
      const answer = await handle({ ...input, me: request.signedIn, request, reply } as unknown as Call<E>)
      void reply.code(endpoint.status)
      // Parsed on the way out too: what the contract does not promise does not leave the server.
      const promised = endpoint.ok.parse(answer)
      if (endpoint.okKind === undefined) return promised
      // Sent as they are; a PDF is bytes, and a view of them that is no Buffer would go out as JSON.
      return reply.type(contentTypes[endpoint.okKind]).send(promised instanceof Uint8Array ? Buffer.from(promised) : promised)
    },
  })
}

const bodyTypes = { csv: 'text/csv', files: 'multipart/form-data', evidence: 'application/octet-stream' } as const

/** A file where JSON is read would be judged byte by byte as an object with as many unknown fields. */
function refuseOtherKind(endpoint: Endpoint, request: FastifyRequest): void {
  if (request.body === undefined) return
  const type = request.headers['content-type']?.toLowerCase() ?? ''
  const kind = (['csv', 'files', 'evidence'] as const).find((known) => type.startsWith(bodyTypes[known]))
  if (kind !== endpoint.bodyKind) throw new Refusal('request/unsupported', type)
}

function inputOf(endpoint: Endpoint, request: FastifyRequest): { params: unknown; query: unknown; body: unknown } {
  const faults: Fault[] = []
  const read = (schema: z.ZodType | undefined, value: unknown, root: string): unknown => {
    if (!schema) return undefined
    const parsed = schema.safeParse(value)
    if (parsed.success) return parsed.data
    faults.push(...faultsOf(parsed.error, root))
    return undefined
  }
  const input = {
    params: read(endpoint.params, request.params, '#params'),
    query: read(endpoint.query, request.query, '#query'),
    body: read(endpoint.body, request.body, '#'),
  }
  if (faults.length > 0) throw new Refusal('request/invalid', faults[0]?.detail, faults)
  return input
}

declare module 'fastify' {
  interface FastifyRequest {
    signedIn: SignedIn | null
  }
}
