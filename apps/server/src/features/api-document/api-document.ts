import type { showApiDocument } from '@glandkeeper/contract/api-document'
import type { Endpoint, OkIn } from '@glandkeeper/contract/endpoint'
import { Problem } from '@glandkeeper/contract/problem'
import { COOKIE, HTTPS_COOKIE } from '../../platform/auth.ts'
import { z } from 'zod'
import { createDocument, type ZodOpenApiContentObject, type ZodOpenApiOperationObject } from 'zod-openapi'

/** OpenAPI 3.1 of these endpoints, from the schemas themselves: nothing to keep in step by hand. */
export function apiDocument(endpoints: Readonly<Record<string, Endpoint>>): OkIn<typeof showApiDocument> {
  const paths: Record<string, Record<string, ZodOpenApiOperationObject>> = {}
  for (const [name, endpoint] of Object.entries(endpoints)) {
    const path = endpoint.path.replaceAll(/:(\w+)/g, '{$1}')
    paths[path] = { ...paths[path], [endpoint.method.toLowerCase()]: operationOf(name, endpoint) }
  }
  const document = createDocument({
    openapi: '3.1.0',
    info: {
      title: 'Glandkeeper',
      version: '1',
      description: 'Register and scheduler for the packed glands of a plant’s valves.',
    },
    paths,
    components: {
      securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: COOKIE, description: `Over https ${HTTPS_COOKIE}.` } },
    },
  })
  return { ...document, paths: document.paths ?? {} }
}

function operationOf(name: string, endpoint: Endpoint): ZodOpenApiOperationObject {
  const { params, query, body, ok, status, who } = endpoint
  const okType = endpoint.okKind === undefined ? 'application/json' : contentTypes[endpoint.okKind]
  return {
    operationId: name.replaceAll(/[ -](\w)/g, (_, letter: string) => letter.toUpperCase()),
    description: who === 'anyone' ? 'For anyone.' : `For ${who.join(', ')}.`,
    ...(who !== 'anyone' && { security: [{ session: [] }] }),
    ...((params || query) && { requestParams: { ...(params && { path: params }), ...(query && { query }) } }),
    ...(body && { requestBody: { content: contentOf(body, endpoint.bodyKind) } }),
    responses: {
      [status]: { description: 'As asked', content: { [okType]: endpoint.okKind === undefined ? { schema: ok } : bytes } },
      default: { description: 'A problem, RFC 9457', content: { 'application/problem+json': { schema: Problem } } },
    },
  }
}

function contentOf(body: z.ZodType, kind: Endpoint['bodyKind']): ZodOpenApiContentObject {
  if (kind === 'csv') return { 'text/csv': bytes }
  if (kind === undefined) return { 'application/json': { schema: body } }
  const names = body instanceof z.ZodObject ? Object.keys(body.shape) : []
  const properties = Object.fromEntries(names.map((name) => [name, bytes.schema]))
  return { 'multipart/form-data': { schema: { type: 'object', required: names, properties } } }
}

const contentTypes = { csv: 'text/csv', calendar: 'text/calendar', pdf: 'application/pdf', jpeg: 'image/jpeg' } as const
/** A file and not JSON. */
const bytes = { schema: { type: 'string', format: 'binary' } } as const
