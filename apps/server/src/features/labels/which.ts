import type { QueryOf } from '@glandkeeper/contract/endpoint'
import { mostLabels, type printLabels } from '@glandkeeper/contract/labels'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { hasWords } from '../board/index.ts'
import type { Label } from './sheets.ts'

type Wanted = Omit<QueryOf<typeof printLabels>, 'size'>

/** The valves that are asked for, in walking order, each with the address its code says; refused when none or too many. */
export async function labelsOf(read: Read, siteId: string, { area, find, tags }: Wanted, origin: string): Promise<Label[]> {
  if (area !== undefined && !(await read.area.findUnique({ where: { siteId_code: { siteId, code: area } } })))
    throw new Refusal('area/unknown', area)
  const valves = await read.valve.findMany({
    where: {
      siteId,
      retiredAt: null,
      ...(area !== undefined && { area: { code: area } }),
      ...(tags !== undefined && { tag: { in: tags } }),
      ...(find !== undefined && hasWords(find)),
    },
    orderBy: [
      { area: { walkPosition: 'asc' } },
      { area: { code: 'asc' } },
      { level: 'asc' },
      { walkPosition: 'asc' },
      { tag: 'asc' },
    ],
    select: { tag: true, description: true, area: { select: { name: true } } },
    take: mostLabels + 1,
  })
  const missing = tags?.find((tag) => !valves.some((valve) => valve.tag === tag))
  if (missing !== undefined) throw new Refusal('valve/unknown', `${missing} is not among the valves asked for`)
  if (valves.length === 0) throw new Refusal('label/nothing-found')
  if (valves.length > mostLabels) throw new Refusal('label/too-many')
  return valves.map(({ tag, description, area: { name } }) => ({
    tag,
    description,
    areaName: name,
    address: addressOf(tag, origin),
  }))
}

/** What a code says that opens a valve. */
export function addressOf(tag: string, origin: string): string {
  return `${origin}/v/${encodeURIComponent(tag)}`
}
