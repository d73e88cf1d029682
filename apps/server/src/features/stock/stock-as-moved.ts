/** What the fold needs of a movement. Amounts are as they were said: never below nought. */
export interface Moved {
  readonly id: string
  /** ordered, received, issued, returned, counted, taken back, used. */
  readonly kind: string
  readonly lotId: string | null
  readonly amount: number
  readonly takenAt: Date
  readonly receivedAt: Date
  /** Of one that is taken back, or an order that came. */
  readonly corrects: string | null
  readonly expectedOn: string | null
}

export interface AwaitedOrder {
  readonly orderId: string
  readonly amount: number
  readonly expectedOn: string
}

export interface StockAsMoved {
  /** Left of each lot; below nought where more went than anybody put down. */
  readonly lots: ReadonlyMap<string, number>
  /** What each movement added or took; those of a lot add up to what is left of it. */
  readonly changes: ReadonlyMap<string, number>
  readonly takenBack: ReadonlySet<string>
  /** Orders that have not come, the soonest first. */
  readonly awaited: readonly AwaitedOrder[]
}

/** Sums of binary fractions miss their mark by less. */
const PARTS_KEPT = 1e6

/** An amount without the dust of binary fractions, and never minus nought. */
export const withoutDust = (amount: number): number => Math.round(amount * PARTS_KEPT) / PARTS_KEPT + 0

/**
 * Stock as its movements leave it, in the order they happened: taken, received, id. A count sets what is there, so what
 * happened before it and is told later changes nothing; what was taken back never happened.
 */
export function stockAsMoved(movements: readonly Moved[]): StockAsMoved {
  const takenBack = new Set(
    movements.flatMap(({ kind, corrects }) => (kind === 'taken back' && corrects !== null ? [corrects] : [])),
  )
  const standing = movements.filter(({ id }) => !takenBack.has(id)).toSorted(byTimeThenId)
  const lots = new Map<string, number>()
  const changes = new Map<string, number>(movements.map(({ id }) => [id, 0]))
  for (const movement of standing) {
    if (movement.lotId === null) continue
    const before = lots.get(movement.lotId) ?? 0
    const after = withoutDust(leftAfter(before, movement))
    lots.set(movement.lotId, after)
    changes.set(movement.id, withoutDust(after - before))
  }
  return { lots, changes, takenBack, awaited: awaitedOf(standing) }
}

function leftAfter(before: number, { kind, amount }: Moved): number {
  switch (kind) {
    case 'received':
    case 'returned':
      return before + amount
    case 'issued':
    case 'used':
      return before - amount
    case 'counted':
      return amount
    default:
      return before
  }
}

function awaitedOf(standing: readonly Moved[]): AwaitedOrder[] {
  const came = new Set(standing.flatMap(({ kind, corrects }) => (kind === 'received' && corrects !== null ? [corrects] : [])))
  return standing
    .flatMap(({ id, kind, amount, expectedOn }) =>
      kind === 'ordered' && expectedOn !== null && !came.has(id) ? [{ orderId: id, amount, expectedOn }] : [],
    )
    .toSorted((one, other) => (one.expectedOn < other.expectedOn ? -1 : one.expectedOn > other.expectedOn ? 1 : 0))
}

/** The order in which movements are replayed. */
export function byTimeThenId(one: Pick<Moved, 'takenAt' | 'receivedAt' | 'id'>, other: typeof one): number {
  return (
    one.takenAt.getTime() - other.takenAt.getTime() ||
    one.receivedAt.getTime() - other.receivedAt.getTime() ||
    (one.id < other.id ? -1 : one.id > other.id ? 1 : 0)
  )
}
