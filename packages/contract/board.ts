import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { keepClear, noseLength } from './glands.ts'
import { everybody } from './roles.ts'
import { count, countFromText } from './quantity.ts'
import { chance, gapNow, reserve, ReserveLimit, Standing } from './reserve.ts'
import { temperature } from './valves.ts'
import { text } from './text.ts'

export const BoardOrder = z.enum(['runs out first', 'least reserve', 'next look', 'tag', 'seen longest ago'])
export type BoardOrder = z.infer<typeof BoardOrder>

const filters = {
  standing: Standing.optional(),
  area: AreaCode.optional(),
  service: text(40).optional(),
  find: text(60).optional(),
}

export const BoardRow = z.object({
  valveId: z.uuid(),
  tag: z.string(),
  description: z.string(),
  service: z.string(),
  fluid: z.string(),
  temperature: temperature.nullable(),
  areaCode: z.string(),
  gapLeft: gapNow.nullable(),
  gapRight: gapNow.nullable(),
  gapIsInferred: z.boolean(),
  keepClear,
  noseLength: noseLength.nullable(),
  reserve: reserve.nullable(),
  reserveLimitedBy: ReserveLimit.nullable(),
  runsOutOn: z.iso.date().nullable(),
  /** Four times in five it runs out between these; null is beyond twenty years, or not known. */
  runsOutEarly: z.iso.date().nullable(),
  runsOutLate: z.iso.date().nullable(),
  chanceBeforeStop: chance.nullable(),
  nextLookOn: z.iso.date().nullable(),
  standing: Standing,
  why: z.string(),
  lastSeenAt: z.iso.datetime().nullable(),
})
export type BoardRow = z.infer<typeof BoardRow>

const valveCount = count('Valves', 0, 10_000_000)

export const showBoard = endpoint({
  method: 'GET',
  path: '/api/board',
  who: everybody,
  query: z.strictObject({
    ...filters,
    order: BoardOrder.default('runs out first'),
    offset: countFromText('Offset', 0, 10_000_000).default(0),
    limit: countFromText('Limit', 1, 500).default(100),
  }),
  ok: z.object({ total: valveCount, rows: z.array(BoardRow) }),
  status: 200,
})

/** The counts beside the filters, and the strip of areas. */
export const showBoardSummary = endpoint({
  method: 'GET',
  path: '/api/board/summary',
  who: everybody,
  ok: z.object({
    total: valveCount,
    /** The next chance to repack, which the chances on the board are counted to. */
    stopOn: z.iso.date(),
    standing: z.record(Standing, valveCount),
    services: z.array(z.object({ service: z.string(), valves: valveCount })),
    areas: z.array(z.object({ code: z.string(), name: z.string(), valves: valveCount, bookOrSpent: valveCount })),
  }),
  status: 200,
})
