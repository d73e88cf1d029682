import { type PaperSize, printCutCard, showCutCard } from '@glandkeeper/contract/cut-cards'
import { queryOptions } from '@tanstack/react-query'
import { addressOf, call } from '../../platform/client.ts'

/** Everything for one repack of a valve, worked out by the server. */
export function cutCardQuery(tag: string) {
  return queryOptions({
    queryKey: ['valve', tag, 'cut card'],
    queryFn: ({ signal }) => call(showCutCard, { params: { tag }, signal }),
  })
}

/** Where the browser gets the sheet of paper. */
export function paperAddress(tag: string, size: PaperSize): string {
  return addressOf(printCutCard, { params: { tag }, query: { size } })
}
