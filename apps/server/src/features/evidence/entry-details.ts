import type { FieldEvent } from '@glandkeeper/contract/events'

/** Who it was, where that is not who was signed in; and the digests of its photos. */
export function detailsOf(body: string): { takenBy: string | undefined; photos: string } {
  try {
    const { takenBy, photos } = JSON.parse(body) as FieldEvent
    return { takenBy, photos: photos?.join(' ') ?? '' }
  } catch {
    return { takenBy: undefined, photos: '' }
  }
}
