import { describe, expect, inject, it } from 'vitest'
import { aDatabase, aStore } from '../../testing/a-store.ts'
import { newId } from './ids.ts'
import type { Store, Write } from './store.ts'

const aSite = (id: string) => ({ id, name: `site ${id}`, timeZone: 'Europe/London', createdAt: new Date(0) })
const names = async (store: Store) => (await store.read.site.findMany()).map((site) => site.id)

/** A promise and the function that resolves it: two requests told exactly when to go on. */
function signal() {
  let give = () => {}
  const given = new Promise<void>((resolve) => (give = resolve))
  return { give, given }
}

describe('a write while another request holds a transaction open', () => {
  it('is kept when the other rolls back, and is not acknowledged before that', async () => {
    const store = await aStore()
    const [inside, goOn] = [signal(), signal()]
    const lost = newId()
    const kept = newId()
    const other = store.write(async (write) => {
      await write.site.create({ data: aSite(lost) })
      inside.give()
      await goOn.given
      throw new Error('the other request fails')
    })
    await inside.given
    let acknowledged = false
    const mine = store.write((write) => write.site.create({ data: aSite(kept) })).then(() => (acknowledged = true))
    await new Promise((resolve) => setTimeout(resolve, 50))
    expect(acknowledged).toBe(false)
    goOn.give()
    await expect(other).rejects.toThrow('the other request fails')
    await mine
    expect(await names(store)).toEqual([kept])
  })

  it('is not seen by reads until it is committed', async () => {
    const store = await aStore()
    const [inside, goOn] = [signal(), signal()]
    const id = newId()
    const writing = store.write(async (write) => {
      await write.site.create({ data: aSite(id) })
      inside.give()
      await goOn.given
    })
    await inside.given
    expect(await names(store)).toEqual([])
    goOn.give()
    await writing
    expect(await names(store)).toEqual([id])
  })

  it('goes on after a write that threw, in the order asked', async () => {
    const store = await aStore()
    const order: string[] = []
    const results = await Promise.allSettled(
      ['a', 'b', 'c'].map((name, index) =>
        store.write(async (write) => {
          await write.site.create({ data: aSite(name) })
          order.push(name)
          if (index === 1) throw new Error('b fails')
        }),
      ),
    )
    expect(results.map((result) => result.status)).toEqual(['fulfilled', 'rejected', 'fulfilled'])
    expect((await names(store)).toSorted()).toEqual(['a', 'c'])
    expect(order).toEqual(['a', 'b', 'c'])
  })
})

describe('the reader', () => {
  it('cannot write, even past its type', async () => {
    const store = await aStore()
    const disguised = store.read as unknown as Write
    await expect(disguised.site.create({ data: aSite('x') })).rejects.toThrow()
    expect(await names(store)).toEqual([])
  })
})

describe.runIf(inject('database').provider === 'postgresql')('two servers on one database', () => {
  it('write one after the other, so that what one has read the other does not change', async () => {
    const url = await aDatabase()
    const servers = [await aStore(url), await aStore(url)]
    await servers[0]!.write((write) => write.site.create({ data: aSite('one') }))
    const addOne = (store: Store) =>
      store.write(async (write) => {
        const { chainLength } = await write.site.findUniqueOrThrow({ where: { id: 'one' } })
        await write.site.update({ where: { id: 'one' }, data: { chainLength: chainLength + 1 } })
      })
    await Promise.all(servers.flatMap((store) => Array.from({ length: 20 }, () => addOne(store))))
    expect((await servers[0]!.read.site.findUnique({ where: { id: 'one' } }))?.chainLength).toBe(40)
  })
})

describe.runIf(inject('database').provider === 'sqlite')('why the gate is there', () => {
  it('Prisma’s adapter by itself loses an acknowledged write', async () => {
    const { PrismaBetterSqlite3 } = await import('@prisma/adapter-better-sqlite3')
    const { PrismaClient } = await import('../generated/sqlite/client.ts')
    const bare = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url: await aDatabase() }) })
    const [inside, goOn] = [signal(), signal()]
    const other = bare.$transaction(async (tx) => {
      await tx.site.create({ data: aSite('other') })
      inside.give()
      await goOn.given
      throw new Error('rolled back')
    })
    await inside.given
    await bare.site.create({ data: aSite('acknowledged') })
    goOn.give()
    await expect(other).rejects.toThrow('rolled back')
    // When this fails the adapter was mended, and the gate can be reconsidered.
    expect(await bare.site.count()).toBe(0)
    await bare.$disconnect()
  })
})
