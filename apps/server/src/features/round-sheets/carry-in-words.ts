import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import type { CordToCarry, RingsToCarry, SpannerToCarry, ToCarry } from './carry.ts'

interface CarryLine {
  /** Empty where the line goes on with the one above. */
  readonly name: string
  readonly says: string
  /** It may not be cut: nobody finds it elsewhere on the sheet. */
  readonly isWhole: boolean
}

/** What to carry, line by line; of a line that is cut the tags go first, and each tag is in its row again. */
export function carryInWords({ spanners, withoutSpanner, cords, pressedRings, open }: ToCarry): CarryLine[] {
  const packing = [
    ...cords.map(cordInWords),
    ...pressedRings.map(ringsInWords),
    ...open.map(({ says, tags }) => `${says}, ask before the round: ${tags.join(', ')}`),
  ]
  const cut = (says: string) => ({ name: '', says, isWhole: false })
  return [
    {
      name: 'Spanners',
      says: spanners.length === 0 ? 'none known' : spanners.map(spannerInWords).join(' · '),
      isWhole: true,
    },
    ...(withoutSpanner.length === 0 ? [] : [cut(`stud thread not recorded, try at the nut: ${withoutSpanner.join(', ')}`)]),
    ...(packing.length === 0 ? ['none likely: no stop stands at book or spent'] : packing)
      .map(cut)
      .map((line, index) => (index === 0 ? { ...line, name: 'For repacks' } : line)),
  ]
}

/** A size and its unit stay on one line. */
function spannerInWords({ marking: written, likely, perhaps }: SpannerToCarry): string {
  const marking = written.replaceAll(' ', '\u00a0')
  const stops = (count: number) => `${count} ${count === 1 ? 'stop' : 'stops'}`
  if (perhaps === 0) return `${marking}: ${stops(likely)}`
  const other = likely === 0 ? stops(perhaps) : perhaps
  return [`${marking}:`, likely > 0 && `${stops(likely)} and`, `other nuts of ${other}`].filter(Boolean).join(' ')
}

function cordInWords({ family, section, size, isListed, metres, tags }: CordToCarry): string {
  const listed = section.endsWith(' mm') ? section : `${section} (${millimetres(size)})`
  const cord = isListed ? listed : `${section}, which no listed cord fits: ask the store`
  return `${metres} m of ${family}, ${cord}: ${tags.join(', ')}`
}

function ringsInWords({ family, stemDiameter, boxBore, rings, tags }: RingsToCarry): string {
  return `${rings} pressed rings of ${family}, stem ${millimetres(stemDiameter)} in bore ${millimetres(boxBore)}: ${tags.join(', ')}`
}
