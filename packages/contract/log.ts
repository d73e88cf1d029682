import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { count, countFromText } from './quantity.ts'
import { everybody } from './roles.ts'
import { text } from './text.ts'

/** What a change of the register was about. */
export const ChangeSubject = z.enum([
  'site',
  'area',
  'valve',
  'person',
  'crew',
  'days off',
  'round',
  'plan',
  'calendar',
  'outage',
  'repack plan',
  'stock item',
  'leak rule',
  'monitoring',
])
export type ChangeSubject = z.infer<typeof ChangeSubject>

const filters = {
  subject: ChangeSubject.optional(),
  person: z.uuid().optional(),
  from: z.iso.date().optional(),
  to: z.iso.date().optional(),
  /** Words that stand in what was done, before or after. */
  find: text(60).optional(),
}

export const LogRow = z.object({
  id: z.string(),
  at: z.iso.datetime(),
  by: z.string(),
  subject: ChangeSubject,
  /** What a person calls it, where it has a name: a tag, a code, a name. */
  name: z.string(),
  what: z.string(),
  changes: z.array(z.object({ field: z.string(), before: z.string(), after: z.string() })),
})
export type LogRow = z.infer<typeof LogRow>

/** Who changed what in the register, the newest first. */
export const showLog = endpoint({
  method: 'GET',
  path: '/api/log',
  who: everybody,
  query: z.strictObject({
    ...filters,
    offset: countFromText('Offset', 0, 10_000_000).default(0),
    limit: countFromText('Limit', 1, 200).default(50),
  }),
  ok: z.object({
    total: count('Changes', 0, 1_000_000_000),
    rows: z.array(LogRow),
    people: z.array(z.object({ personId: z.uuid(), name: z.string() })),
  }),
  status: 200,
})

export const exportLog = endpoint({
  method: 'GET',
  path: '/api/log.csv',
  who: everybody,
  query: z.strictObject(filters),
  ok: z.string(),
  okKind: 'csv',
  status: 200,
})
