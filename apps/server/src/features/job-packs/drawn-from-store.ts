import type { CutCard } from '@glandkeeper/contract/cut-cards'
import { spannersInWords, studsInWords } from '@glandkeeper/drawings/cut-card-words'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import { amountInWords, amountOf, type OpenNeed, packingInWords, type PackingNeed } from '../stock/index.ts'

/** One line of what is drawn from the store for a valve. */
export interface Drawn {
  /** How much, or nothing where that is no question; null where nobody can say, and a line is printed to write it on. */
  readonly figure: string | null
  readonly says: string
  /** It comes of a batch that belongs in the record. */
  readonly hasBatch: boolean
}

/** Packing first, as its kit has it; then studs, what goes on the threads, and the tools its figures name. */
export function drawnFromStore(card: CutCard, need: PackingNeed | OpenNeed): Drawn[] {
  const plain = (figure: string | null, says: string): Drawn => ({ figure, says, hasBatch: false })
  const { gland, spanners, cut } = card
  const grade = gland.studGrade === 'unknown' ? 'grade not recorded' : `grade ${gland.studGrade}`
  const lubricant = lubricants[gland.lubrication]
  const isSpannerKnown = spanners.length > 0
  return [
    { ...packingOf(card, need), hasBatch: true },
    plain(null, `studs and nuts, only where a thread is worn: it has ${studsInWords(card)}, ${grade}`),
    ...(lubricant === null ? [] : [plain('', lubricant)]),
    plain(isSpannerKnown ? '1' : null, isSpannerKnown ? `spanner, ${spannersInWords(card)}` : 'spanner: try at the nut'),
    ...(cut === null ? [] : [plain('1', `bar of ${millimetres(cut.mandrel)}, as thick as the stem, to wind the cord on`)]),
  ]
}

const lubricants = {
  dry: null,
  oiled: 'oil for threads and nut faces, as the torque was worked out for',
  paste: 'paste for threads and nut faces, as the torque was worked out for',
  unknown: 'lubricant for the nuts: not recorded, ask which',
} as const

function packingOf({ family, cord }: CutCard, need: PackingNeed | OpenNeed): Pick<Drawn, 'figure' | 'says'> {
  if ('open' in need) return { figure: null, says: `${family ?? 'packing'}: ${need.open}; ask, and write here how much` }
  const figure = amountInWords(amountOf(need), need.kind === 'cord' ? 'm' : 'pc')
  if (need.kind === 'die-formed ring') return { figure, says: packingInWords(need) }
  const wound = `${need.wraps} wraps in one piece, and the share of this site for ends`
  return { figure, says: `${packingInWords(need)}: ${cord?.says ?? ''} (${wound})` }
}
