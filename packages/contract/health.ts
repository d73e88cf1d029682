import { z } from 'zod'
import { endpoint } from './endpoint.ts'

/** For people who keep the server running, and for the start-up script. Says nothing about the plant. */
export const showHealth = endpoint({
  method: 'GET',
  path: '/api/health',
  who: 'anyone',
  ok: z.object({ status: z.literal('ready'), database: z.enum(['sqlite', 'postgresql']), version: z.string() }),
  status: 200,
})
