import type { BodyIn, Endpoint, OkOf, ParamsIn, QueryIn } from '@glandkeeper/contract/endpoint'
import { Problem } from '@glandkeeper/contract/problem'

/** The server understood the request and said no; `problem` says why, in words and with places. */
export class ProblemError extends Error {
  readonly problem: Problem
  constructor(problem: Problem) {
    super(problem.detail ?? problem.title)
    this.problem = problem
  }
}

/** No answer, or an answer that is not ours: the network, a proxy, a server that is starting. */
export class Unreachable extends Error {}

export interface CallInput<E extends Endpoint> {
  params?: ParamsIn<E>
  query?: QueryIn<E>
  body?: BodyIn<E>
  signal?: AbortSignal
}

/** Calls one endpoint of the contract. The answer is parsed with the same schema the server promised. */
export async function call<E extends Endpoint>(
  endpoint: E,
  input: CallInput<E> = {},
  fetcher: typeof fetch = fetch,
): Promise<OkOf<E>> {
  const orUnreachable = (cause: unknown): never => {
    if (input.signal?.aborted) throw cause
    throw new Unreachable('the server does not answer', { cause })
  }
  const response = await fetcher(addressOf(endpoint, input), requestOf(endpoint, input)).catch(orUnreachable)
  if (!response.ok) throw await refusalOf(response)
  const answer: unknown = endpoint.okKind === 'csv' ? await response.text() : await response.json().catch(orUnreachable)
  return endpoint.ok.parse(answer) as OkOf<E>
}

/** The address of an endpoint, for links that the browser follows by itself. */
export function addressOf<E extends Endpoint>(endpoint: E, input: Pick<CallInput<E>, 'params' | 'query'>): string {
  const params = (input.params ?? {}) as Record<string, string | number | undefined>
  const path = endpoint.path.replace(/:(\w+)/g, (_, name: string) => encodeURIComponent(String(params[name])))
  const query = new URLSearchParams()
  for (const [name, value] of Object.entries((input.query ?? {}) as Record<string, string | number | undefined>)) {
    if (value !== undefined && value !== '') query.set(name, String(value))
  }
  return query.size === 0 ? path : `${path}?${query.toString()}`
}

function requestOf<E extends Endpoint>(endpoint: E, input: CallInput<E>): RequestInit {
  const shared = { method: endpoint.method, ...(input.signal && { signal: input.signal }) }
  if (input.body === undefined) return shared
  if (endpoint.bodyKind === 'csv' || endpoint.bodyKind === 'evidence') {
    const headers = { 'content-type': endpoint.bodyKind === 'csv' ? 'text/csv' : 'application/octet-stream' }
    return { ...shared, body: input.body as unknown as Uint8Array<ArrayBuffer>, headers }
  }
  // The browser writes the content type itself: it holds the boundary between the files.
  if (endpoint.bodyKind === 'files') return { ...shared, body: formOf(input.body as object) }
  return { ...shared, body: JSON.stringify(input.body), headers: { 'content-type': 'application/json' } }
}

/** Each field that is bytes becomes a file of that name. */
function formOf(body: object): FormData {
  const form = new FormData()
  for (const [name, bytes] of Object.entries(body))
    if (bytes instanceof Uint8Array) form.append(name, new Blob([bytes as Uint8Array<ArrayBuffer>]))
  return form
}

async function refusalOf(response: Response): Promise<Error> {
  const parsed = Problem.safeParse(await response.json().catch(() => undefined))
  return parsed.success ? new ProblemError(parsed.data) : new Unreachable(`status ${response.status} without a problem document`)
}
