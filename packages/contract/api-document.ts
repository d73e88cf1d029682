import { z } from 'zod'
import { endpoint } from './endpoint.ts'

/** The whole interface as an OpenAPI 3.1 document, made from the same schemas the server parses with. */
export const showApiDocument = endpoint({
  method: 'GET',
  path: '/api/openapi.json',
  who: 'anyone',
  ok: z.looseObject({ openapi: z.string(), paths: z.record(z.string(), z.unknown()) }),
  status: 200,
})
