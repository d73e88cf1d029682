import type { FastifyError, FastifyInstance, FastifyReply } from 'fastify'
import { type Fault, type Problem, type ProblemCode, problemOf } from '@glandkeeper/contract/problem'
import { Prisma } from '../generated/sqlite/client.ts'

/** A request that is understood and refused, by a code of the contract's table. */
export class Refusal extends Error {
  readonly code: ProblemCode
  readonly detail: string | undefined
  readonly errors: readonly Fault[] | undefined
  constructor(code: ProblemCode, detail?: string, errors?: readonly Fault[]) {
    super(detail === undefined ? code : `${code}: ${detail}`)
    this.code = code
    this.detail = detail
    this.errors = errors
  }
}

export function asProblem(refusal: Refusal, instance?: string): Problem {
  return problemOf(refusal.code, refusal.detail, refusal.errors, instance)
}

/** One handler for everything that goes wrong: known refusals keep their words, the rest stays in the log. */
export function registerProblems(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    const refusal = refusalFor(error)
    if (!refusal) request.log.error(error)
    return sendProblem(reply, asProblem(refusal ?? new Refusal('server/fault'), request.id))
  })
}

export function sendProblem(reply: FastifyReply, problem: Problem): FastifyReply {
  if (problem.status === 503) void reply.header('retry-after', '1')
  return reply.code(problem.status).type('application/problem+json').send(JSON.stringify(problem))
}

const fastifyCodes: Readonly<Record<string, ProblemCode>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: 'request/too-large',
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'request/unsupported',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'request/malformed',
  FST_ERR_CTP_INVALID_JSON_BODY: 'request/malformed',
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: 'request/malformed',
}

/** P2002 unique, P2034 write conflict, P2024 pool, P2028 transaction, P1008 lock: the database's words in ours. */
const databaseCodes: Readonly<Record<string, ProblemCode>> = {
  P2002: 'store/conflict',
  P2034: 'store/conflict',
  P2024: 'store/busy',
  P2028: 'store/busy',
  P1008: 'store/busy',
}

export function refusalFor(error: unknown): Refusal | undefined {
  if (error instanceof Refusal) return error
  if (error instanceof SyntaxError && 'statusCode' in error)
    return new Refusal('request/malformed', 'the body is not well-formed JSON')
  if (error instanceof Prisma.PrismaClientKnownRequestError) {
    const code = databaseCodes[error.code]
    return code && new Refusal(code)
  }
  const { code, statusCode } = (error ?? {}) as { code?: string; statusCode?: number }
  if (statusCode === 429) return new Refusal('person/too-many-tries')
  const known = code === undefined ? undefined : fastifyCodes[code]
  if (known) return new Refusal(known)
  return statusCode === 400 ? new Refusal('request/malformed') : undefined
}
