import type { StockItem } from '@glandkeeper/contract/stores'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'
import { amountInWords } from './amount-in-words.ts'

export interface MovementToTell {
  readonly kind: string
  readonly amount: number
  readonly expectedOn: string | null
  readonly lot: { readonly label: string; readonly batch: string; readonly expiresOn: string | null } | null
  readonly tag: string | null
  readonly outageName: string | null
  /** Of one that takes another back: that other. */
  readonly takesBack: MovementToTell | null
  readonly note: string
}

/** One movement as a person would tell it. */
export function movementInWords(movement: MovementToTell, unit: StockItem['unit']): string {
  const said = `${partsOf(movement, unit).filter(Boolean).join(', ')}.`
  return movement.note === '' ? said : `${said} ${movement.note}`
}

function partsOf(movement: MovementToTell, unit: StockItem['unit']): (string | false | null)[] {
  const { kind, expectedOn, lot, tag, outageName, takesBack } = movement
  const amount = amountInWords(movement.amount, unit)
  switch (kind) {
    case 'ordered':
      return [`Ordered ${amount}`, expectedOn && `expected ${dayInWords(expectedOn)}`]
    case 'received':
      return [
        `Received ${amount}`,
        lot && `batch ${lot.batch}`,
        lot?.expiresOn ? `good until ${dayInWords(lot.expiresOn)}` : null,
      ]
    case 'issued':
      return [
        `Issued ${amount}${outageName === null && tag === null ? '' : ` for ${[outageName, tag].filter(Boolean).join(', ')}`}`,
      ]
    case 'returned':
      return [`Returned ${amount}`]
    case 'counted':
      return [`Counted: ${amount} there`]
    case 'used':
      return [`Used ${amount}${tag === null ? '' : ` at ${tag}`}`]
    default:
      return [
        `Taken back: ${takesBack === null ? 'an earlier movement' : withSmallLetter(movementInWords({ ...takesBack, note: '' }, unit)).slice(0, -1)}`,
      ]
  }
}

const dayInWords = (isoDay: string): string => format(parseISO(isoDay), 'd MMM yyyy')

const withSmallLetter = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)
