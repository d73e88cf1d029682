import type { BodyIn } from '@glandkeeper/contract/endpoint'
import type { addOutage, Outage } from '@glandkeeper/contract/outages'
import { addWeeks, format, parseISO } from 'date-fns'
import { figureOf } from '../readings/index.ts'

type OutageBody = BodyIn<typeof addOutage>

/** An outage as typed, before it is known to fit the contract. */
export interface OutageDraft {
  readonly name: string
  readonly earliestOn: string
  readonly likelyOn: string
  readonly latestOn: string
  readonly days: string
  readonly fitting: string
  readonly scaffolding: string
  readonly isolating: string
  readonly areaCodes: readonly string[]
}

export type OutageText = Exclude<keyof OutageDraft, 'areaCodes'>

export const emptyOutage: OutageDraft = {
  name: '',
  earliestOn: '',
  likelyOn: '',
  latestOn: '',
  days: '',
  fitting: '',
  scaffolding: '',
  isolating: '',
  areaCodes: [],
}

export function outageDraftOf({ name, earliestOn, likelyOn, latestOn, days, hours, areaCodes }: Outage): OutageDraft {
  return {
    name,
    earliestOn,
    likelyOn,
    latestOn,
    days: String(days),
    fitting: String(hours.fitting),
    scaffolding: String(hours.scaffolding),
    isolating: String(hours.isolating),
    areaCodes,
  }
}

/** What is sent. A settled day need be typed once; an empty figure is no number, which the contract says in words. */
export function outageOfDraft(draft: OutageDraft): OutageBody {
  const { name, earliestOn, likelyOn, latestOn, days, fitting, scaffolding, isolating, areaCodes } = draft
  const figure = (text: string) => figureOf(text) ?? Number.NaN
  return {
    name,
    earliestOn: earliestOn || likelyOn,
    likelyOn,
    latestOn: latestOn || likelyOn,
    days: figure(days),
    hours: { fitting: figure(fitting), scaffolding: figure(scaffolding), isolating: figure(isolating) },
    areaCodes: [...areaCodes],
  }
}

/** The same outage so many weeks later, or earlier: all three of its days move alike. */
export function slipped(outage: Outage, weeks: number): OutageBody {
  const { name, days, hours, areaCodes } = outage
  const moved = (day: string) => format(addWeeks(parseISO(day), weeks), 'yyyy-MM-dd')
  return {
    name,
    days,
    hours,
    areaCodes: [...areaCodes],
    earliestOn: moved(outage.earliestOn),
    likelyOn: moved(outage.likelyOn),
    latestOn: moved(outage.latestOn),
  }
}

/** The place of the contract that each field of the draft goes to. */
export const placeOfField: Readonly<Record<OutageText, string>> = {
  name: 'name',
  earliestOn: 'earliestOn',
  likelyOn: 'likelyOn',
  latestOn: 'latestOn',
  days: 'days',
  fitting: 'hours/fitting',
  scaffolding: 'hours/scaffolding',
  isolating: 'hours/isolating',
}
