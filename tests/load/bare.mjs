// The same statements on better-sqlite3 without Prisma, for comparison. Not used by the program.
import Database from 'better-sqlite3'
import { canonicalJson, hashOf } from '../../apps/server/dist/platform/chain.js'
import { forecastMade, glandRecord } from '../../apps/server/dist/features/glands/index.js'

/** @param basis what every forecast starts from; read anew in each intake all the same, as ours does */
export function openBare(file, basis) {
  const database = new Database(file, { timeout: 5000 })
  database.pragma('journal_mode = WAL')
  database.pragma('synchronous = FULL')
  const statements = {
    count: database.prepare('SELECT count(*) AS n FROM valve_state WHERE site_id = ? AND retired = 0'),
    page: database.prepare(
      `SELECT s.*, v.*, a.code AS area_code FROM valve_state s JOIN valve v ON v.id = s.valve_id JOIN area a ON a.id = v.area_id
       WHERE s.site_id = ? AND s.retired = 0 ORDER BY s.urgency, s.valve_id LIMIT ? OFFSET ?`,
    ),
    site: database.prepare('UPDATE site SET chain_length = chain_length + 0 WHERE id = ? RETURNING chain_head, chain_length'),
    settings: database.prepare('SELECT key, value FROM site_setting WHERE site_id = ?'),
    fit: database.prepare('SELECT id FROM wear_fit WHERE site_id = ? ORDER BY fitted_at DESC LIMIT 1'),
    known: database.prepare('SELECT id, body, position, site_id FROM event WHERE id = ?'),
    valve: database.prepare('SELECT * FROM valve WHERE site_id = ? AND id = ?'),
    insert: database.prepare(
      'INSERT INTO event(id, site_id, position, valve_id, kind, version, taken_at, received_at, person_id, device, body, hash) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)',
    ),
    head: database.prepare('UPDATE site SET chain_head = ?, chain_length = ? WHERE id = ?'),
    events: database.prepare('SELECT id, kind, body, taken_at FROM event WHERE site_id = ? AND valve_id = ?'),
    state: database.prepare(
      'UPDATE valve_state SET gap_left_mm = ?, gap_right_mm = ?, gap_is_inferred = ?, reserve_mm = ?, reserve_limited_by = ?, runs_out_at = ?, urgency = ?, last_seen_at = ?, findings = ?, entry_count = ?, chance_before_stop = ?, stop_at = ?, forecast = ?, next_look_at = ?, next_look = ? WHERE valve_id = ?',
    ),
    said: database.prepare('INSERT INTO forecast_made VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)'),
  }
  return { database, statements, basis, close: () => database.close() }
}

export function bareBoard({ statements }, siteId, { limit, offset }) {
  return { total: statements.count.get(siteId).n, rows: statements.page.all(siteId, limit, offset) }
}

export function bareIntake({ database, statements: s, basis }, by, event, receivedAt) {
  return database
    .transaction(() => {
      const site = s.site.get(by.siteId)
      if (s.known.get(event.id)) return
      const valve = camel(s.valve.get(by.siteId, event.valveId))
      const position = site.chain_length + 1
      const body = canonicalJson(event)
      const link = {
        id: event.id,
        siteId: by.siteId,
        position,
        valveId: event.valveId,
        kind: event.kind,
        version: 1,
        takenAt: new Date(event.takenAt),
        receivedAt,
        personId: by.personId,
        device: event.device,
        body,
      }
      const hash = hashOf(site.chain_head, link)
      s.insert.run(
        link.id,
        link.siteId,
        position,
        link.valveId,
        link.kind,
        1,
        iso(link.takenAt),
        iso(receivedAt),
        link.personId,
        link.device,
        body,
        hash,
      )
      s.head.run(hash, position, by.siteId)
      const events = s.events.all(by.siteId, event.valveId).map((row) => ({ ...row, takenAt: new Date(row.taken_at) }))
      s.settings.all(by.siteId)
      s.fit.get(by.siteId)
      const record = glandRecord({ ...valve, retiredAt: null, createdAt: new Date(valve.createdAt) }, events, basis)
      const { state } = record
      s.state.run(
        state.gapLeftMm,
        state.gapRightMm,
        Number(state.gapIsInferred),
        state.reserveMm,
        state.reserveLimitedBy,
        iso(state.runsOutAt),
        state.urgency,
        iso(state.lastSeenAt),
        state.findings,
        state.entryCount,
        state.chanceBeforeStop,
        iso(state.stopAt),
        state.forecast,
        iso(state.nextLookAt),
        state.nextLook,
        valve.id,
      )
      const said = forecastMade(record, event.id, receivedAt)
      if (said) {
        const { dates, straightLineAt, madeAt, countedFrom, ...rest } = said
        const { id, siteId, valveId, eventId, groupName, readingsUsed, reserveMm } = rest
        s.said.run(
          id,
          siteId,
          valveId,
          eventId,
          iso(madeAt),
          iso(countedFrom),
          groupName,
          readingsUsed,
          reserveMm,
          dates,
          iso(straightLineAt),
        )
      }
    })
    .immediate()
}

/** As Prisma's adapter writes a moment. */
function iso(date) {
  return date === null ? null : date.toISOString().replace('Z', '+00:00')
}

function camel(row) {
  return Object.fromEntries(
    Object.entries(row).map(([name, value]) => [name.replaceAll(/_(\w)/g, (_, letter) => letter.toUpperCase()), value]),
  )
}
