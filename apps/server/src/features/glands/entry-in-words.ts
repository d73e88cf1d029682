import type { FieldEvent, FoundRing } from '@glandkeeper/contract/events'
import { formatMillimetres as millimetres, formatTurns } from '@glandkeeper/units/format'

type Body =
  | Exclude<FieldEvent, { kind: 'fact.corrected' }>
  | NonNullable<Extract<FieldEvent, { kind: 'fact.corrected' }>['replacement']>

/** One entry as a person would tell it, with its figures. */
export function entryInWords(event: FieldEvent): string {
  if (event.kind !== 'fact.corrected') return told(event)
  const instead = event.replacement === null ? 'taken back' : `corrected to: ${told(event.replacement)}`
  return `An earlier entry ${instead}${instead.endsWith('.') ? '' : '.'} Reason: ${event.reason}.`
}

function told(body: Body): string {
  const found = body.kind === 'packing.renewed' ? body.found : undefined
  return [`${partsOf(body).filter(Boolean).join(', ')}.`, found && foundInWords(found), body.note].filter(Boolean).join(' ')
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
        body.plume !== undefined && `plume of ${body.plume} m`,
        body.opening !== undefined && `as through a hole of ${millimetres(body.opening)}`,
        screeningOf(body),
        body.stemPosition && `stem ${body.stemPosition}`,
        body.duty,
      ]
    case 'leak.treated':
      return [
        `Leak treated: ${body.treatment}`,
        body.leakBefore && `${body.leakBefore} before`,
        body.leakAfter && `${body.leakAfter} after`,
      ]
    case 'repair.deferred':
      return [`Repair put off: ${body.reason}`, body.until && `until ${body.until}`, `allowed by ${body.approvedBy}`]
    case 'packing.renewed':
      return [
        ['Repacked', ringsOf(body)].filter(Boolean).join(': '),
        familyOf(body.family),
        batchOf(body.batch),
        body.jointsStaggered && 'joints staggered',
        body.loadedInSteps && 'loaded in steps',
        body.torque !== undefined && `${body.torque.toFixed(1)}\u00a0N·m on each nut`,
        gapsAfter(body),
        provedOf(body.proved),
        doneByInWords(body.doneBy),
      ]
    case 'ring.added':
      return [
        body.rings === 1 ? 'One ring added on top' : `${body.rings} rings added on top`,
        batchOf(body.batch),
        gapsAfter(body),
      ]
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

function ringsOf({ rings, section }: Extract<Body, { kind: 'packing.renewed' }>): string {
  if (rings === undefined) return section === undefined ? '' : `section ${millimetres(section)}`
  return `${rings === 1 ? 'one ring' : `${rings} rings`}${section === undefined ? '' : ` of ${millimetres(section)}`}`
}

function screeningOf(body: Extract<Body, { kind: 'leak.seen' }>): string | false {
  const { screeningValue, background, isPegged, instrument, calibratedOn } = body
  if (screeningValue === undefined) return false
  const by = [instrument && `with ${instrument}`, calibratedOn && `calibrated ${calibratedOn}`].filter(Boolean).join(', ')
  const over = background === undefined ? '' : `, background ${background}`
  return `screening value ${screeningValue} ppmv${isPegged ? ', meter at its end' : ''}${over}${by && ` (${by})`}`
}

function familyOf(family: string): string | false {
  return family !== 'unknown' && family
}

function provedOf(proved: boolean | undefined): string | undefined {
  if (proved === undefined) return undefined
  return proved ? 'proved, no overrun' : 'not proved'
}

function batchOf(batch: string | undefined): string | undefined {
  return batch && `batch ${batch}`
}

function doneByInWords(doneBy: Extract<Body, { kind: 'packing.renewed' }>['doneBy']): string | undefined {
  if (doneBy === undefined) return undefined
  const who = doneBy.kind === 'contractor' ? 'a contractor' : 'own crew'
  return `done by ${who}${doneBy.name === '' ? '' : `: ${doneBy.name}`}`
}

/** Neighbours that are alike are told together, the ring under the follower first. */
function foundInWords(found: readonly FoundRing[]): string {
  const runs: { from: number; to: number; says: string }[] = []
  found.forEach(({ condition, cause }, index) => {
    const says = cause === undefined ? condition : `${condition} (${cause})`
    const last = runs.at(-1)
    if (last?.says === says) last.to = index + 1
    else runs.push({ from: index + 1, to: index + 1, says })
  })
  const [first, ...others] = runs
  if (first && others.length === 0)
    return found.length === 1 ? `One old ring: ${first.says}.` : `${found.length} old rings, all ${first.says}.`
  const each = runs.map(({ from, to, says }) => `${numbersOf(from, to)} ${says}`).join(', ')
  return `Old rings, from the follower down: ${each}.`
}

/** @example numbersOf(2, 4) // → '2 to 4' */
function numbersOf(from: number, to: number): string {
  if (from === to) return String(from)
  return to === from + 1 ? `${from} and ${to}` : `${from} to ${to}`
}
