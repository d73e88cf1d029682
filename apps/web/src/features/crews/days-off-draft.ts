import { type addDaysOff, type AreaWalk, type Crew, type DaysOff, DaysOffInput } from '@glandkeeper/contract/crews'
import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { innermost, quantities } from '@glandkeeper/contract/quantity'
import { figureOf } from '../readings/index.ts'
import { ruleOf } from './repeats.ts'

type Named = readonly Pick<Crew, 'crewId' | 'name'>[]
type Areas = readonly Pick<AreaWalk, 'areaCode' | 'areaName'>[]

const THE_SITE = 'the site'
const CREW = 'crew '
const AREA = 'area '

/** Days off as typed, before they are known to fit the contract. */
export interface DaysOffDraft {
  /** One of the values of `whoseChoices`. */
  readonly whose: string
  readonly reason: string
  readonly startsOn: string
  readonly endsOn: string
  readonly comesBack: string
  readonly percent: string
}

export const emptyDaysOff: DaysOffDraft = {
  whose: THE_SITE,
  reason: '',
  startsOn: '',
  endsOn: '',
  comesBack: 'does not',
  percent: '100',
}

/** Whose days off they may be: of the site, of a crew, of an area. */
export function whoseChoices(crews: Named, areas: Areas) {
  return [
    { value: THE_SITE, words: THE_SITE },
    ...crews.map(({ crewId, name }) => ({ value: `${CREW}${crewId}`, words: `${CREW}${name}` })),
    ...areas.map(({ areaCode, areaName }) => ({ value: `${AREA}${areaCode}`, words: `${AREA}${areaCode} ${areaName}` })),
  ]
}

/** Of a crew that was retired only that is known. */
export function whoseInWords({ crewId, areaCode }: Pick<DaysOff, 'crewId' | 'areaCode'>, crews: Named, areas: Areas): string {
  const wanted = crewId !== null ? `${CREW}${crewId}` : areaCode !== null ? `${AREA}${areaCode}` : THE_SITE
  const choice = whoseChoices(crews, areas).find(({ value }) => value === wanted)
  return choice?.words ?? (crewId === null ? wanted : 'a retired crew')
}

/** An area is closed or not: a share is of the hours of people. */
export function hasShare({ whose }: DaysOffDraft): boolean {
  return !whose.startsWith(AREA)
}

/** What is sent. */
export function daysOffOfDraft(draft: DaysOffDraft): BodyIn<typeof addDaysOff> {
  const { whose, reason, startsOn, endsOn, comesBack, percent } = draft
  return {
    crewId: whose.startsWith(CREW) ? whose.slice(CREW.length) : null,
    areaCode: whose.startsWith(AREA) ? whose.slice(AREA.length) : null,
    reason,
    startsOn,
    endsOn,
    repeats: ruleOf(comesBack),
    share: hasShare(draft) ? (figureOf(percent) ?? Number.NaN) / 100 : 1,
  }
}

/** @example percentInWords(0.07) // → '7\u00a0%' */
export function percentInWords(share: number): string {
  return `${Math.round(share * 1000) / 10}\u00a0%`
}

/** The range of a share, as it is typed here: the contract counts from 0 to 1. */
export function percentRange(): string {
  const share = quantities.get(innermost(DaysOffInput.shape.share))
  if (!share) throw new Error('the share is not in the registry of quantities')
  return `From ${percentInWords(share.min)} to ${percentInWords(share.max)}`
}
