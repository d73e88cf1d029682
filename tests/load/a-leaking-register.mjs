import Database from 'better-sqlite3'
import { glandCourse, leakRows } from '../../apps/server/dist/features/glands/index.js'
import { hashOf } from '../../apps/server/dist/platform/chain.js'
import { migrateSqlite } from '../../apps/server/dist/platform/migrations.js'
import { leakingValves } from './leaking-valves.mjs'

const VALVES_OF_AN_AREA = 500
const PER_TRANSACTION = 50_000
const services = [
  ['saturated steam', 160],
  ['superheated steam', 320],
  ['condensate', 95],
  ['feed water', 120],
  ['cooling water', 25],
  ['thin stock', 45],
  ['white water', 40],
  ['caustic', 60],
  ['heat transfer oil', 260],
  ['natural gas', 20],
  ['compressed air', 30],
  ['bleach liquor', 50],
]

const siteId = '019a0000-0000-7000-8000-000000000001'
const personId = '019a0000-0000-7000-8000-000000000003'
const idOf = (group, number) => `019a0000-0000-7000-${group}-${number.toString(16).padStart(12, '0')}`
const valveIdOf = (number) => idOf('8001', number)
/** As the store writes a time. */
const kept = (date) => date.toISOString().replace('Z', '+00:00')

/**
 * A migrated register of one site with so many valves and at least so many entries, written past the server, honestly hashed;
 * and the leaks that the server's own leakRows makes of them. No states: nothing that is measured here reads one.
 */
export async function aLeakingRegister(file, prismaFolder, { valves, events, endsAt, say }) {
  await migrateSqlite(file, prismaFolder, () => endsAt)
  const database = new Database(file)
  database.pragma('journal_mode = WAL')
  // What a power cut would lose is made again; and the index of entries by valve is filled out of order.
  database.pragma('synchronous = OFF')
  database.pragma('cache_size = -2000000')
  database.transaction(() => writeRegister(database, valves, endsAt))()
  const written = writeEvents(database, { valves, events, endsAt, say })
  const leaks = database.transaction(() => keepLeaks(database, say))()
  database.pragma('wal_checkpoint(TRUNCATE)')
  database.close()
  say(`${written} entries and ${leaks} leaks written`)
}

function put(database, table, row) {
  const columns = Object.keys(row)
  const values = columns.map((column) => `@${column}`).join(', ')
  return database.prepare(`INSERT INTO "${table}" (${columns.join(', ')}) VALUES (${values})`).run(row)
}

function writeRegister(database, valves, endsAt) {
  const now = kept(endsAt)
  put(database, 'site', {
    id: siteId,
    name: 'Bench',
    time_zone: 'Europe/London',
    created_at: now,
    ready_at: now,
    leaks_kept_at: now,
  })
  const person = { id: personId, site_id: siteId, name: 'Bench', sign_in_name: 'bench', role: 'planner' }
  put(database, 'person', { ...person, password_hash: '', created_at: now })
  for (let area = 0; area * VALVES_OF_AN_AREA < valves; area += 1)
    put(database, 'area', {
      id: idOf('8002', area),
      site_id: siteId,
      code: `A${area}`,
      name: `Area ${area}`,
      walk_position: area,
      level: 0,
    })
  writeOutages(database, now)
  for (let number = 0; number < valves; number += 1) put(database, 'valve', valveRow(number, now))
}

function writeOutages(database, now) {
  for (const [name, endedOn] of [
    ['Spring of the year before', '2025-04-20'],
    ['Autumn', '2025-10-12'],
  ])
    put(database, 'outage', {
      id: crypto.randomUUID(),
      site_id: siteId,
      name,
      earliest_on: endedOn,
      likely_on: endedOn,
      latest_on: endedOn,
      days: 10,
      fitting_hours: 100,
      scaffolding_hours: 0,
      isolating_hours: 0,
      area_codes: '[]',
      state: 'over',
      started_on: endedOn,
      ended_on: endedOn,
      created_at: now,
    })
}

function valveRow(number, now) {
  const tag = `V-${String(number).padStart(6, '0')}`
  const [service, temperature] = services[number % services.length]
  return {
    id: valveIdOf(number),
    site_id: siteId,
    area_id: idOf('8002', Math.floor(number / VALVES_OF_AN_AREA)),
    tag,
    search_text: tag.toLowerCase(),
    description: `Valve ${number} of the bench`,
    walk_position: number,
    level: 0,
    service,
    fluid: service,
    phase: 'liquid',
    temperature_c: temperature,
    pressure_bar: 5,
    valve_kind: 'gate',
    isolation_boundary: '',
    isolates_on_line: 0,
    access: 'floor',
    criticality: 'ordinary',
    box_bore_mm: 45,
    stem_diameter_mm: 28,
    box_depth_mm: 48,
    follower_kind: 'two-piece',
    nose_length_mm: 20,
    least_engagement_mm: 3,
    keep_clear_mm: 3,
    stud_thread: 'M12',
    stud_count: 2,
    stud_grade: '8.8',
    lubrication: 'paste',
    created_at: now,
    updated_at: now,
  }
}

function writeEvents(database, { valves, events, endsAt, say }) {
  const insert = database.prepare(
    `INSERT INTO event (id, site_id, position, valve_id, kind, version, taken_at, received_at, person_id, device, body, hash)
     VALUES (@id, @siteId, @position, @valveId, @kind, 1, @taken, @received, @personId, @device, @body, @hash)`,
  )
  let before = ''
  let position = 0
  database.exec('BEGIN')
  for (const { number, takenAt, kind, fields } of leakingValves({ valves, events, endsAt })) {
    position += 1
    const link = linkAt(position, number, { takenAt, kind, fields })
    before = hashOf(before, link)
    insert.run({ ...link, taken: kept(link.takenAt), received: kept(link.receivedAt), hash: before })
    if (position % PER_TRANSACTION === 0) database.exec('COMMIT; BEGIN')
    if (position % 1_000_000 === 0) say(`${position} entries written`)
  }
  database.exec('COMMIT')
  database.prepare('UPDATE site SET chain_head = ?, chain_length = ?').run(before, position)
  return position
}

function linkAt(position, number, { takenAt, kind, fields }) {
  const [id, valveId, device] = [idOf('8003', position), valveIdOf(number), 'phone of the second shift']
  const said = { ...fields, device, id, kind, takenAt: takenAt.toISOString(), valveId, version: 1 }
  // Keys in order and plain figures: canonical as it is.
  const body = JSON.stringify(Object.fromEntries(Object.entries(said).toSorted(([one], [other]) => (one < other ? -1 : 1))))
  const receivedAt = new Date(takenAt.getTime() + 47_123)
  return { id, siteId, position, valveId, kind, version: 1, takenAt, receivedAt, personId, device, body }
}

function keepLeaks(database, say) {
  const valves = database.prepare('SELECT * FROM valve ORDER BY id').all().map(inFields)
  const events = database.prepare('SELECT id, kind, body, taken_at FROM event WHERE site_id = ? AND valve_id = ?')
  let insert = null
  let leaks = 0
  for (const [index, valve] of valves.entries()) {
    const rows = events.all(siteId, valve.id).map((row) => ({ ...row, takenAt: new Date(row.taken_at) }))
    for (const leak of leakRows(valve, glandCourse(valve, rows).standing, null)) {
      const columns = Object.keys(leak)
      insert ??= database.prepare(
        `INSERT INTO leak (${columns.map(inColumn).join(', ')}) VALUES (${columns.map((column) => `@${column}`).join(', ')})`,
      )
      insert.run(
        Object.fromEntries(Object.entries(leak).map(([name, value]) => [name, value instanceof Date ? kept(value) : value])),
      )
      leaks += 1
    }
    if (index > 0 && index % 20_000 === 0) say(`leaks of ${index} valves kept`)
  }
  return leaks
}

const inColumn = (field) => field.replaceAll(/[A-Z]/g, (capital) => `_${capital.toLowerCase()}`)
const inFields = (row) =>
  Object.fromEntries(
    Object.entries(row).map(([name, value]) => [name.replaceAll(/_(\w)/g, (_, letter) => letter.toUpperCase()), value]),
  )
