import type { OkIn } from '@glandkeeper/contract/endpoint'
import type { LeakLoss, showLeakLosses } from '@glandkeeper/contract/leak-losses'
import type { SettingValues } from '@glandkeeper/contract/settings'
import { hoursPerYear } from '@glandkeeper/engines/leak/leak-quantity'
import { lossOfLeak } from '@glandkeeper/engines/leak/loss'
import { groupedBy } from '../../platform/grouped-by.ts'
import type { Read } from '../../platform/store.ts'
import { siteSettings } from '../settings/index.ts'
import { measuredOf } from './measured.ts'
import { type OpenLeak, openLeaks } from './open-leaks.ts'
import { pricesOf } from './prices.ts'
import { lossesInWords } from './says.ts'
import { type PricedLoss, sumOf } from './sums.ts'

type Answer = OkIn<typeof showLeakLosses>
type Prices = ReturnType<typeof pricesOf>

interface WorkedOut extends PricedLoss {
  readonly of: OpenLeak
  readonly shown: LeakLoss
}

/** What the open leaks of a site lose, the largest loss first. */
export async function leakLosses(read: Read, siteId: string): Promise<Answer> {
  const [{ leaks, beyond }, settings] = await Promise.all([openLeaks(read, siteId), siteSettings(read, siteId)])
  const hours = hoursPerYear(settings.hoursPerYear)
  const prices = pricesOf(settings)
  const losses: WorkedOut[] = []
  const withoutFigure: OpenLeak[] = []
  for (const leak of leaks) {
    const loss = lossOf(leak, settings, prices)
    if (loss) losses.push(loss)
    else withoutFigure.push(leak)
  }
  losses.sort((one, other) => other.range.middle - one.range.middle || (one.shown.tag < other.shown.tag ? -1 : 1))
  return {
    losses: losses.map(({ shown }) => shown),
    byArea: [...groupedBy(losses, ({ shown }) => shown.areaCode)]
      .map(([areaCode, own]) => ({
        areaCode,
        name: own[0]?.of.valve.area.name ?? '',
        leaks: own.length,
        ...sumOf(own, hours),
      }))
      .toSorted((one, other) => other.kilogramsPerHour.middle - one.kilogramsPerHour.middle),
    total: { leaks: losses.length, ...sumOf(losses, hours) },
    withoutFigure: withoutFigure.map(({ valve, grade }) => ({ tag: valve.tag, grade })),
    hoursPerYear: settings.hoursPerYear,
    says: lossesInWords({
      methods: losses.map(({ shown }) => shown.method),
      settings,
      withoutPrice: losses.filter(({ price }) => price.money === null).length,
      withoutFigure: withoutFigure.length,
      openingsWithoutLoss: withoutFigure.filter(({ sighting }) => sighting !== null).length,
      beyond,
    }),
  }
}

function lossOf(leak: OpenLeak, settings: SettingValues, prices: Prices): WorkedOut | null {
  const found = measuredOf(leak, settings)
  if (found === null || leak.sighting === null) return null
  const loss = lossOfLeak(found.measured)
  if (!loss.ok) return null
  const price = prices[found.lost]
  const range = loss.kgPerHour
  const { valve, sighting } = leak
  const care = [loss.whyNotValid, found.care].filter((why) => why !== null).join('; ')
  const shown: LeakLoss = {
    leakId: leak.leakId,
    tag: valve.tag,
    description: valve.description,
    areaCode: valve.area.code,
    service: valve.service,
    grade: leak.grade,
    seenAt: sighting.takenAt.toISOString(),
    method: loss.method,
    mark: loss.mark,
    care: care === '' ? null : care,
    ...sumOf([{ range, price }], hoursPerYear(settings.hoursPerYear)),
  }
  return { of: leak, range, price, shown }
}
