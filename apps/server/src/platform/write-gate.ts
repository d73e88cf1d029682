import { Refusal } from './problem.ts'

/**
 * One at a time, in the order asked, and not more waiting than can be served. Prisma's SQLite adapter holds one
 * connection: a bare query sent while another request's transaction is open runs inside it, and is lost with it.
 * Its own queue of transactions has no order to rely on and gives up by time; this one says busy before it starts.
 */
export class WriteGate {
  #tail: Promise<void> = Promise.resolve()
  #waiting = 0
  readonly #mostWaiting: number

  constructor(mostWaiting: number) {
    this.#mostWaiting = mostWaiting
  }

  async pass<T>(write: () => Promise<T>): Promise<T> {
    if (this.#waiting >= this.#mostWaiting) throw new Refusal('store/busy', `${this.#waiting} writes are waiting`)
    this.#waiting += 1
    const before = this.#tail
    let open = (): void => {}
    this.#tail = new Promise((resolve) => (open = resolve))
    await before
    try {
      return await write()
    } finally {
      this.#waiting -= 1
      open()
    }
  }
}
