import type { FieldEvent } from '@glandkeeper/contract/events'
import { formatMillimetres as millimetres, formatTurns } from '@glandkeeper/units/format'

type Body =
  Exclude<FieldEvent, { kind: 'fact.corrected' }> | NonNullable<Extract<FieldEvent, { kind: 'fact.corrected' }>['replacement']>

/** One entry as a person would tell it, with its figures. */
export function entryInWords(event: FieldEvent): string {
  if (event.kind !== 'fact.corrected') return sentence(partsOf(event), event.note)
  const instead =
    event.replacement === null ? 'taken back' : `corrected to: ${sentence(partsOf(event.replacement), event.replacement.note)}`
  return `An earlier entry ${instead}${instead.endsWith('.') ? '' : '.'} Reason: ${event.reason}.`
}

function partsOf(body: Body): (string | false | undefined)[] {
  switch (body.kind) {
    case 'reading.taken':
      return [
        `Gap ${gaps(body)}`,
        body.threadRemaining !== undefined && `${millimetres(body.threadRemaining)} of stud thread remaining`,
        leak(body.leak),
        stem(body.stem),
      ]
    case 'gland.nipped':
      return [
        turnsOf(body),
        body.leakBefore && `${body.leakBefore} before`,
        body.leakAfter && `${body.leakAfter} after`,
        stem(body.stem),
      ]
    case 'leak.seen':
      return [
        body.leak === 'dry' ? 'Looked at, no leak seen' : `Leak seen: ${body.leak}`,
        body.dropsPerMinute !== undefined && `about ${body.dropsPerMinute} drops a minute`,
        body.screeningValue !== undefined && `screening value ${body.screeningValue} ppmv`,
      ]
    case 'packing.renewed':
      return [
        `Repacked${body.rings === undefined ? '' : `: ${body.rings} rings`}${body.section === undefined ? '' : ` of ${millimetres(body.section)}`}`,
        familyOf(body.family),
        body.jointsStaggered && 'joints staggered',
        body.loadedInSteps && 'loaded in steps',
        gapsAfter(body),
        provedOf(body.proved),
      ]
    case 'ring.added':
      return [body.rings === 1 ? 'One ring added on top' : `${body.rings} rings added on top`, gapsAfter(body)]
    case 'visit.missed':
      return [`Not done: ${body.reason}`]
  }
}

function turnsOf({ turnsLeft, turnsRight }: Extract<Body, { kind: 'gland.nipped' }>): string {
  const same = turnsLeft === turnsRight
  const words = same
    ? `${formatTurns(Math.abs(turnsLeft))} on each nut`
    : `${formatTurns(turnsLeft)} left, ${formatTurns(turnsRight)} right`
  return same && turnsLeft < 0 ? `Slackened ${words}` : `Taken up ${words}`
}

function gaps({ gapLeft, gapRight }: { gapLeft?: number | undefined; gapRight?: number | undefined }): string {
  const sides = [
    gapLeft !== undefined && `${millimetres(gapLeft)} left`,
    gapRight !== undefined && `${millimetres(gapRight)} right`,
  ].filter(Boolean)
  return sides.length === 0 ? 'not read' : sides.join(', ')
}

function gapsAfter(body: { gapLeft?: number | undefined; gapRight?: number | undefined }): string {
  return `gap ${gaps(body)}`
}

function leak(grade: string | undefined): string | undefined {
  return grade === 'dry' ? 'no leak seen' : grade
}

function stem(feel: string | undefined): string | undefined {
  return feel && `stem ${feel}`
}

function familyOf(family: string): string | false {
  return family !== 'unknown' && family
}

function provedOf(proved: boolean | undefined): string | undefined {
  if (proved === undefined) return undefined
  return proved ? 'proved, no overrun' : 'not proved'
}

function sentence(parts: readonly (string | false | undefined)[], note: string | undefined): string {
  const said = `${parts.filter(Boolean).join(', ')}.`
  return note ? `${said} ${note}` : said
}
