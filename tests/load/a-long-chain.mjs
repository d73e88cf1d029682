import { createHash } from 'node:crypto'
import Database from 'better-sqlite3'
import { canonicalJson } from '../../apps/server/dist/platform/chain.js'
import { migrateSqlite } from '../../apps/server/dist/platform/migrations.js'

const BEGINS = Date.UTC(2016, 0, 4, 7)
const STEP_MILLISECONDS = 300_000
const VALVES = 2_000
const PER_TRANSACTION = 20_000

const siteId = '019a0000-0000-7000-8000-000000000001'
const areaId = '019a0000-0000-7000-8000-000000000002'
const personId = '019a0000-0000-7000-8000-000000000003'
const valveIdOf = (number) => `019a0000-0000-7000-8001-${String(number).padStart(12, '0')}`

/** A migrated register of one site with so many entries, written past the server, each hashed as RFC 8785 spells it. */
export async function aLongChain(file, prismaFolder, events) {
  await migrateSqlite(file, prismaFolder, () => new Date(BEGINS))
  const database = new Database(file)
  database.pragma('journal_mode = WAL')
  // What a power cut would lose is made again.
  database.pragma('synchronous = OFF')
  writeRegister(database)
  const insert = database.prepare(
    `INSERT INTO event (id, site_id, position, valve_id, kind, version, taken_at, received_at, person_id, device, body, hash)
     VALUES (@id, @siteId, @position, @valveId, @kind, @version, @takenAt, @receivedAt, @personId, @device, @body, @hash)`,
  )
  let before = ''
  const writeSome = database.transaction((from, to) => {
    for (let position = from; position <= to; position += 1) {
      const link = linkAt(position)
      const hash = createHash('sha256')
        .update(canonicalJson({ before, ...link }))
        .digest('hex')
      insert.run({ ...link, takenAt: kept(link.takenAt), receivedAt: kept(link.receivedAt), hash })
      before = hash
    }
  })
  for (let from = 1; from <= events; from += PER_TRANSACTION) writeSome(from, Math.min(from + PER_TRANSACTION - 1, events))
  database.prepare('UPDATE site SET chain_head = ?, chain_length = ?').run(before, events)
  database.close()
  return { siteId, personId }
}

function linkAt(position) {
  const valveId = valveIdOf(position % VALVES)
  const takenAt = new Date(BEGINS + position * STEP_MILLISECONDS).toISOString()
  const receivedAt = new Date(Date.parse(takenAt) + 47_123).toISOString()
  const event = {
    id: `019a0000-0000-7000-8002-${String(position).padStart(12, '0')}`,
    version: 1,
    valveId,
    takenAt,
    device: 'phone of the second shift',
    ...(position % 3 === 0 ? nip : reading),
  }
  const { id, kind, version, device } = event
  return { id, siteId, position, valveId, kind, version, takenAt, receivedAt, personId, device, body: canonicalJson(event) }
}

const reading = { kind: 'reading.taken', gapLeft: 11.4, gapRight: 11.2, leak: 'dry', stem: 'free' }
const nip = {
  kind: 'gland.nipped',
  turnsLeft: 0.25,
  turnsRight: 0.25,
  leakBefore: 'weep',
  leakAfter: 'dry',
  stem: 'free',
  note: 'Steam at the stem, dry after a quarter turn',
}

/** As the store writes a time. */
const kept = (iso) => iso.replace('Z', '+00:00')

function writeRegister(database) {
  const now = kept(new Date(BEGINS).toISOString())
  const put = (table, row) => {
    const columns = Object.keys(row)
    database
      .prepare(`INSERT INTO "${table}" (${columns.join(', ')}) VALUES (${columns.map((column) => `@${column}`).join(', ')})`)
      .run(row)
  }
  put('site', { id: siteId, name: 'Bench', time_zone: 'Europe/London', created_at: now, ready_at: now })
  put('area', { id: areaId, site_id: siteId, code: 'BM', name: 'Board machine', walk_position: 1, level: 0 })
  const person = { id: personId, site_id: siteId, name: 'Bench', sign_in_name: 'bench', role: 'planner' }
  put('person', { ...person, password_hash: '', created_at: now })
  for (let number = 0; number < VALVES; number += 1) put('valve', valveRow(number, now))
}

function valveRow(number, now) {
  const tag = `BM-${String(number).padStart(4, '0')}`
  return {
    id: valveIdOf(number),
    site_id: siteId,
    area_id: areaId,
    tag,
    search_text: tag.toLowerCase(),
    description: 'Valve of the bench',
    walk_position: number,
    level: 0,
    service: 'isolation',
    fluid: 'steam',
    phase: 'gas',
    valve_kind: 'gate',
    isolation_boundary: '',
    isolates_on_line: 0,
    access: 'floor',
    criticality: 'normal',
    least_engagement_mm: 5,
    keep_clear_mm: 2,
    stud_grade: 'unknown',
    lubrication: 'unknown',
    created_at: now,
    updated_at: now,
  }
}
