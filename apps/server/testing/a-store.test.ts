import { describe, expect, it } from 'vitest'
import { aStore } from './a-store.ts'

const at = new Date('2026-05-04T09:00:00Z')
const person = { id: 'p', siteId: 's', name: 'P', signInName: 'p', role: 'planner', passwordHash: '', createdAt: at } as const
const change = {
  id: 'c',
  siteId: 's',
  at,
  personId: 'p',
  subject: 'valve',
  subjectId: 'v',
  what: 'added',
  before: '{}',
  after: '{}',
}

// A register may have served an earlier test: each of these fills the one it gets.
describe.each([1, 2, 3])('the register of test %i', () => {
  it('holds nothing of an earlier one, and guards what is written', async () => {
    const store = await aStore()
    expect([await store.read.site.count(), await store.read.registerChange.count()]).toEqual([0, 0])
    await store.write(async (write) => {
      await write.site.create({ data: { id: 's', name: 'S', timeZone: 'Europe/London', createdAt: at, readyAt: null } })
      await write.person.create({ data: person })
      await write.registerChange.create({ data: change })
    })
    await expect(store.write((write) => write.registerChange.deleteMany({}))).rejects.toThrow()
  })
})
