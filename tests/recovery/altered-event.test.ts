import type Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { aFolder, forge, proved, rehash, verify } from './a-forged-register.ts'

/** A process of its own: a machine that runs every test at once takes many seconds for it. */
const SLOW_MACHINE = 120_000

const BODY = "UPDATE event SET body = replace(body, '9', '8') WHERE position = 2"
const COPY =
  "valve_id, kind, version, taken_at, received_at, person_id, device, replace(body, '9', '7'), hash FROM event WHERE position = 2"

it('a register as it was written is proved whole', { timeout: SLOW_MACHINE }, async () => {
  const { folder } = await aFolder({ isExported: false })
  const { status, said } = verify(folder)
  expect([status, said]).toEqual([0, expect.stringMatching(/^Test mill: 3 events, chain whole, head [0-9a-f]{64}\n$/)])
})

it('and with a head that was signed, that it holds', { timeout: SLOW_MACHINE }, async () => {
  const { folder } = await aFolder({ isExported: true })
  const { status, said } = verify(folder)
  expect([status, said]).toEqual([0, expect.stringMatching(/head [0-9a-f]{64}, 1 signed head holds\n$/)])
})

it('one that was altered ends the command with a fault', { timeout: SLOW_MACHINE }, async () => {
  const { folder } = await aFolder({ isExported: false })
  forge(folder, BODY)
  const { status, said } = verify(folder)
  expect([status, said]).toEqual([1, expect.stringContaining('chain broken at position 2, event')])
})

describe('what was done past the triggers is found and named', () => {
  it.each([
    ['an entry altered', BODY, 'chain broken at position 2, event'],
    [
      'its time',
      "UPDATE event SET taken_at = '2026-01-01T00:00:00.000+00:00' WHERE position = 3",
      'chain broken at position 3, event',
    ],
    ['a time that is none', "UPDATE event SET received_at = 'then' WHERE position = 3", 'chain broken at position 3, event'],
    ['bytes in place of a device', "UPDATE event SET device = x'ff' WHERE position = 1", 'chain broken at position 1, event'],
    [
      'the first entry deleted',
      'DELETE FROM event WHERE position = 1',
      'chain broken at position 1: the event at position 1 is missing',
    ],
    ['the last', 'DELETE FROM event WHERE position = 3', 'position 3: 3 events were written, 2 are there'],
    [
      'two entries that changed places',
      'UPDATE event SET position = 9 WHERE position = 1; UPDATE event SET position = 1 WHERE position = 2; UPDATE event SET position = 2 WHERE position = 9;',
      'chain broken at position 1, event',
    ],
    [
      'one put behind the last',
      `INSERT INTO event SELECT 'extra', site_id, 4, ${COPY}`,
      'chain broken at position 4: 3 events were written, 4 are there',
    ],
    [
      'one put behind the last, and counted',
      `INSERT INTO event SELECT 'extra', site_id, 4, ${COPY}; UPDATE site SET chain_length = 4;`,
      'chain broken at position 4, event extra',
    ],
    [
      'one put before the first',
      `INSERT INTO event SELECT 'extra', site_id, 0, ${COPY}`,
      'chain broken at position 0, event extra: an event stands at position 0 that was never written there',
    ],
    [
      'one put in between',
      `UPDATE event SET position = 4 WHERE position = 3; INSERT INTO event SELECT 'extra', site_id, 3, ${COPY}; UPDATE site SET chain_length = 4;`,
      'chain broken at position 3, event extra',
    ],
    ['a state', 'UPDATE valve_state SET reserve_mm = 12', 'the kept state of BH-1 is not what its events make: reserveMm'],
  ])('%s', async (_, sql, named) => {
    const { folder } = await aFolder({ isExported: false })
    forge(folder, sql)
    const { faults, said } = await proved(folder)
    expect(said).toContain(named)
    expect(faults).toBeGreaterThan(0)
  })
})

describe('a chain written anew with hashes that fit', () => {
  const anew = (database: Database.Database) => {
    database.exec(BODY)
    rehash(database)
  }

  it('deceives whoever looks at the hashes alone', async () => {
    const { folder } = await aFolder({ isExported: false })
    forge(folder, anew)
    expect((await proved(folder)).said).toContain('3 events, chain whole')
  })

  it.each<[string, (database: Database.Database) => void, string]>([
    ['does not hold to the head that was signed', anew, 'is not what stands there: the chain was written anew'],
    [
      'nor where the signed head was made to fit',
      (database) => {
        anew(database)
        database.exec('UPDATE chain_seal SET hash = (SELECT hash FROM event WHERE position = 3)')
      },
      'was altered, or its key',
    ],
    [
      'nor where it was made shorter',
      (database) => {
        database.exec('DELETE FROM event WHERE position = 3')
        rehash(database)
      },
      'is no longer in the chain',
    ],
  ])('%s', async (_, work, named) => {
    const { folder } = await aFolder({ isExported: true })
    forge(folder, work)
    const { faults, said } = await proved(folder)
    expect([faults > 0, said]).toEqual([
      true,
      expect.stringMatching(/^Test mill: chain broken at position 3: the head signed at position 3 on /),
    ])
    expect(said).toContain(named)
  })
})
