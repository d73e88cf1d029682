import { type FieldEvent, schemaOfKind } from '@glandkeeper/contract/events'
import { unusualQuantities } from '@glandkeeper/contract/quantity'
import type { Finding } from '@glandkeeper/contract/reserve'
import type { ReserveFinding } from '@glandkeeper/engines/reserve/findings'
import { formatMillimetres as millimetres, formatTurns } from '@glandkeeper/units/format'

/** Past this a device's clock is said to be ahead; entries older than now are ordinary. */
const CLOCK_AHEAD_MILLISECONDS = 2 * 60_000

export function findingsInWords(findings: readonly ReserveFinding[]): Finding[] {
  return findings.map((finding) => ({ code: finding.code, detail: inWords(finding) }))
}

function inWords(finding: ReserveFinding): string {
  switch (finding.code) {
    case 'reserve/turns-disagree-with-gap':
      return `gap ${finding.side} reads ${millimetres(finding.read)}, the turns since the last reading say ${millimetres(finding.expected)}: read again`
    case 'reserve/follower-tilts':
      return (
        `follower tilts ${millimetres(Math.abs(finding.gapLeft - finding.gapRight))}: ` +
        `${millimetres(finding.gapLeft)} left, ${millimetres(finding.gapRight)} right`
      )
    case 'reserve/follower-barely-entered':
      return `only ${millimetres(Math.max(finding.engagement, 0))} of the nose is in the box, ${millimetres(finding.leastEngagement)} is the least`
    case 'reserve/no-travel-left':
      return 'no travel left'
    case 'reserve/nipped-without-travel':
      return 'taken up although no travel was left'
    case 'reserve/turns-past-the-face':
      return `the turns would put the ${finding.side} side ${millimetres(finding.by)} past the box face: measure the gap`
    case 'reserve/nipped-unevenly':
      return `nuts taken up unevenly: ${formatTurns(finding.turnsLeft)} left, ${formatTurns(finding.turnsRight)} right`
    case 'reserve/slackened':
      return 'the gland was slackened'
    case 'reserve/pitch-unknown':
      return finding.studThread === null
        ? 'the stud thread is not in the register, so turns cannot be counted as travel'
        : `${finding.studThread} is not a thread we know, so turns cannot be counted as travel`
    case 'reserve/gap-unknown-after-packing':
      return 'no gap was read after packing: measure it'
    case 'reserve/stem-stiff':
      return `the stem is ${finding.stem}: stop and report before it is nipped again`
    case 'reserve/turns-out-of-reach':
      return `the turns would put the ${finding.side} side ${millimetres(finding.gap)} off the box face: measure the gap`
    case 'reserve/thread-without-gap':
      return 'stud thread was read and no gap is known: read both together, or it does not count'
    case 'reserve/not-proved':
      return 'not proved: no check that the wheel stays when released'
  }
}

/** What stands out about an entry by itself, whatever its gland: figures that are possible but unusual, and its clock. */
export function eventFindings(event: FieldEvent, receivedAt: Date): Finding[] {
  // A correction's own figures are those it puts in the place of others.
  const said: { readonly kind: string } = event.kind === 'fact.corrected' ? (event.replacement ?? event) : event
  const schema = schemaOfKind(said.kind)
  const unusual = schema ? unusualQuantities(schema, { ...said }) : []
  const findings = unusual.map(({ meta, value }) => ({
    code: 'event/unusual',
    detail: `${meta.label} ${value} ${meta.unit} is unusual: ${(meta.usual ?? []).join(' to ')} is usual`.replaceAll('  ', ' '),
  }))
  const ahead = Date.parse(event.takenAt) - receivedAt.getTime()
  if (ahead > CLOCK_AHEAD_MILLISECONDS) {
    findings.push({
      code: 'event/clock-ahead',
      detail: `the clock of ${event.device} is ${Math.round(ahead / 60_000)} minutes ahead`,
    })
  }
  return findings
}

/** A correction that changes nothing: its entry is of another valve, a correction itself, or has not arrived yet. */
export function correctionFindings(event: FieldEvent, knownFacts: ReadonlySet<string>): Finding[] {
  if (event.kind !== 'fact.corrected' || knownFacts.has(event.corrects)) return []
  return [{ code: 'event/corrects-nothing', detail: 'it changes nothing: what it corrects is not an entry of this valve' }]
}

/** What the books of the store say to what an entry took; `left` is in words. */
export function storeFinding(
  said: { readonly code: 'stock/lot-unknown' } | { readonly code: 'stock/below-nought'; readonly left: string },
): Finding {
  const { code } = said
  if (code === 'stock/lot-unknown') return { code, detail: "the reel is not in the store's books" }
  return { code, detail: `the store's books say only ${said.left} were left: count it` }
}
