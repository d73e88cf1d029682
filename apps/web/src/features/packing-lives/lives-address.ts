import { HeatBand } from '@glandkeeper/contract/packing-lives'

const MOST_LETTERS = 40

/** Which lives are compared: kept in the address, so that it can be sent to somebody. */
export interface LivesView {
  /** Null for all. */
  readonly service: string | null
  readonly heat: HeatBand
}

export function livesViewOf(address: URLSearchParams): LivesView {
  const service = (address.get('service') ?? '').trim().slice(0, MOST_LETTERS)
  return { service: service === '' ? null : service, heat: HeatBand.safeParse(address.get('heat')).data ?? 'any' }
}

/** @example withLives({ service: null, heat: 'any' }, { service: 'condensate' }) // → '?service=condensate' */
export function withLives(view: LivesView, change: Partial<LivesView>): string {
  const { service, heat } = { ...view, ...change }
  const address = new URLSearchParams()
  if (service !== null) address.set('service', service)
  if (heat !== 'any') address.set('heat', heat)
  return `?${address.toString()}`
}
