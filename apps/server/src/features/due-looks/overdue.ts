import type { OkOf } from '@glandkeeper/contract/endpoint'
import type { OverdueLook, showDueLooks } from '@glandkeeper/contract/due-looks'
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays'
import { parseISO } from 'date-fns/parseISO'
import { dayAt, startOfDayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { bandsOf, type KeptLook, standingOfRow } from '../glands/index.ts'
import { siteSettings } from '../settings/index.ts'

type Areas = OkOf<typeof showDueLooks>['areas'][number]['overdue']
export interface Overdue {
  readonly looks: readonly OverdueLook[]
  readonly count: number
  readonly byArea: ReadonlyMap<string, Areas>
}

const MOST_LISTED = 200
const worstFirst = ['spent', 'book', 'watch', 'ample'] as const
const none: Areas = { spent: 0, book: 0, watch: 0, ample: 0 }

/** Valves whose next look was due before today, by the day of the site; those nobody has seen are due at once. */
export async function overdueLooks(read: Read, siteId: string, now: Date): Promise<Overdue> {
  const [{ timeZone }, settings] = await Promise.all([
    read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } }),
    siteSettings(read, siteId),
  ])
  const today = dayAt(now, timeZone)
  const rows = await read.valveState.findMany({
    where: { siteId, retired: false, OR: [{ nextLookAt: { lt: startOfDayAt(today, timeZone) } }, { nextLookAt: null }] },
    include: { valve: { select: { tag: true, description: true, area: { select: { code: true } } } } },
  })
  const bands = bandsOf(settings)
  const byArea = new Map<string, Areas>()
  const looks = rows.map(({ valve, ...state }): OverdueLook => {
    const standing = standingOfRow(state, bands)
    const counts = byArea.get(valve.area.code) ?? { ...none }
    byArea.set(valve.area.code, { ...counts, [standing]: counts[standing] + 1 })
    const dueOn = state.nextLookAt && dayAt(state.nextLookAt, timeZone)
    const rule = state.nextLook === null ? 'never seen' : (JSON.parse(state.nextLook) as KeptLook).rule
    return {
      tag: valve.tag,
      description: valve.description,
      areaCode: valve.area.code,
      standing,
      dueOn,
      daysOver: dueOn === null ? null : differenceInCalendarDays(parseISO(today), parseISO(dueOn)),
      cause: rule,
    }
  })
  const place = ({ standing }: OverdueLook) => worstFirst.indexOf(standing)
  looks.sort((one, other) => place(one) - place(other) || (other.daysOver ?? Infinity) - (one.daysOver ?? Infinity))
  return { looks: looks.slice(0, MOST_LISTED), count: looks.length, byArea }
}
