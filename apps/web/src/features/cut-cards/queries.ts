import { type PaperSize, printCutCard } from '@glandkeeper/contract/cut-cards'
import { queryOptions } from '@tanstack/react-query'
import { addressOf } from '../../platform/client.ts'
import { cutCardOf } from '../pocket/queries.ts'

/** Everything for one repack of a valve, worked out by the server; without signal, as this device carries it. */
export function cutCardQuery(tag: string) {
  return queryOptions({
    queryKey: ['valve', tag, 'cut card'],
    queryFn: ({ signal }) => cutCardOf(tag, signal),
  })
}

/** Where the browser gets the sheet of paper. */
export function paperAddress(tag: string, size: PaperSize): string {
  return addressOf(printCutCard, { params: { tag }, query: { size } })
}
