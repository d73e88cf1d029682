import type { EvidenceScope } from '@glandkeeper/contract/evidence'
import { expect, it } from 'vitest'
import { sendEvents } from '@glandkeeper/contract/events'
import { anEvidenceRegister } from '../../../testing/evidence-register.ts'
import { Refusal } from '../../platform/problem.ts'
import { countIn, placesIn, siteThen } from './scope.ts'

const scopes: readonly [string, EvidenceScope, number[]][] = [
  ['everything', {}, [1, 2, 3, 4, 5]],
  ['a valve', { tag: 'TF-1' }, [4]],
  ['an area', { area: 'BH' }, [1, 2, 3, 5]],
  ['a valve of an area', { area: 'TF', tag: 'TF-1' }, [4]],
  ['days of the site, where 23:30 UTC is the next', { from: '2026-04-03', to: '2026-04-03' }, [3, 4]],
  ['an entry, with its correction of another month', { from: '2026-04-02', to: '2026-04-02' }, [2, 5]],
  ['a correction, with the entry it corrects', { from: '2026-05-01' }, [2, 5]],
  ['a valve up to a day', { tag: 'BH-1', to: '2026-04-01' }, [1]],
  ['another valve than the correction is of', { tag: 'TF-1', from: '2026-05-01' }, []],
  ['a time in which nothing was', { to: '2025-12-31' }, []],
  ['years no database knows', { from: '0000-01-01', to: '9999-12-31' }, [1, 2, 3, 4, 5]],
]

it('finds the entries of a scope, corrections and what they correct always together', async () => {
  const { server } = await anEvidenceRegister()
  const { read } = server.store
  const site = await siteThen(read, server.siteId)
  for (const [name, scope, places] of scopes) {
    expect([name, await placesIn(read, site, scope)]).toEqual([name, places])
    expect([name, await countIn(read, site, scope)]).toEqual([name, places.length])
  }
})

it('two corrections of one entry come along, and the entry once', async () => {
  const { server, readings, correction } = await anEvidenceRegister()
  const { read } = server.store
  const second = { ...correction, id: crypto.randomUUID(), corrects: readings[1]!.id, takenAt: '2026-05-03T08:00:00Z' }
  await server.expectOk('fitter', sendEvents, { body: { events: [second] } })
  const site = await siteThen(read, server.siteId)
  expect(await placesIn(read, site, { from: '2026-05-03' })).toEqual([2, 5, 6])
})

it('what came after the export was begun is not in it', async () => {
  const { server } = await anEvidenceRegister()
  const site = await siteThen(server.store.read, server.siteId)
  expect(await placesIn(server.store.read, { ...site, chainLength: 2 }, {})).toEqual([1, 2])
})

it('a valve or an area that is not there is refused by name', async () => {
  const { server } = await anEvidenceRegister()
  const site = await siteThen(server.store.read, server.siteId)
  const refused = (scope: EvidenceScope) =>
    placesIn(server.store.read, site, scope).catch((error: unknown) => (error instanceof Refusal ? error.code : error))
  expect(await refused({ tag: 'BH-9' })).toBe('valve/unknown')
  expect(await refused({ area: 'ZZ' })).toBe('area/unknown')
  expect(await refused({ area: 'BH', tag: 'TF-1' })).toBe('valve/unknown')
})
