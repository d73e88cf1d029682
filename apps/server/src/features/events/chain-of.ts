import type { EventModel } from '../../generated/sqlite/models.ts'
import type { Read } from '../../platform/store.ts'

const PAGE = 1000

/** A site's events in the order of the chain, in pages, so that a long one is never held whole. */
export async function* chainOf(read: Read, siteId: string): AsyncGenerator<EventModel> {
  let after = 0
  for (;;) {
    const page = await read.event.findMany({
      where: { siteId, position: { gt: after } },
      orderBy: { position: 'asc' },
      take: PAGE,
    })
    yield* page
    if (page.length < PAGE) return
    after = page.at(-1)?.position ?? after
  }
}
