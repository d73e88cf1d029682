import type { EventModel } from '../../generated/sqlite/models.ts'
import type { Read } from '../../platform/store.ts'

const PAGE = 1000

/** A site's events in the order of the chain, to a position; in pages, so that a long one is never held whole. */
export async function* chainOf(read: Read, siteId: string, upTo = Number.MAX_SAFE_INTEGER): AsyncGenerator<EventModel> {
  let after = 0
  for (;;) {
    const page = await read.event.findMany({
      where: { siteId, position: { gt: after } },
      orderBy: { position: 'asc' },
      take: PAGE,
    })
    for (const event of page) {
      if (event.position > upTo) return
      yield event
    }
    if (page.length < PAGE) return
    after = page.at(-1)?.position ?? after
  }
}
