import type { BodyOf } from '@glandkeeper/contract/endpoint'
import type { monitorValves } from '@glandkeeper/contract/leak-rules'
import { calendarDayOf } from '@glandkeeper/engines/stores/calendar-day'
import type { SignedIn } from '../../platform/auth.ts'
import { Refusal } from '../../platform/problem.ts'
import { changeRow } from '../../platform/register-change.ts'
import type { Write } from '../../platform/store.ts'
import { ruleOf } from './rule-of-row.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>
type Asked = BodyOf<typeof monitorValves>
type Monitoring = Pick<Asked, 'kind' | 'note' | 'since'> & { readonly rule: string }

/** Puts all these valves under the rule, or none; a rule of null takes them out. @returns how many it did so with */
export async function monitorValvesOf(write: Write, by: By, asked: Asked, now: Date): Promise<number> {
  const { ruleId, kind, note, since } = asked
  if (calendarDayOf(since) === null) {
    const detail = `${since} is not a day of this time`
    throw new Refusal('request/invalid', detail, [{ pointer: '#/since', detail }])
  }
  const { siteId, personId } = by
  const rule = ruleId === null ? null : await ruleOf(write, siteId, ruleId)
  const named = await valvesOf(write, siteId, [...new Set(asked.tags)])
  // What is under no rule is not taken out of one.
  const valves = rule === null ? named.filter(({ monitoring }) => monitoring?.rule) : named
  const data = { ruleId, kind, note, since, personId, at: now }
  const known = valves.filter(({ monitoring }) => monitoring !== null)
  await write.valveMonitoring.updateMany({ where: { valveId: { in: known.map(({ id }) => id) } }, data })
  const fresh = valves.filter(({ monitoring }) => monitoring === null)
  if (fresh.length > 0)
    await write.valveMonitoring.createMany({ data: fresh.map(({ id }) => ({ valveId: id, siteId, ...data })) })
  const after = { rule: rule?.name ?? 'none', kind, note, since }
  const notes = valves.map(({ id, monitoring }) => noteOf(id, monitoring, after))
  await write.insertRows(
    'register_change',
    notes.map((one) => changeRow(by, one, now)),
  )
  return valves.length
}

async function valvesOf(write: Write, siteId: string, tags: readonly string[]) {
  const found = await write.valve.findMany({
    where: { siteId, tag: { in: [...tags] } },
    select: {
      id: true,
      tag: true,
      monitoring: { select: { kind: true, note: true, since: true, rule: { select: { name: true } } } },
    },
  })
  const known = new Set(found.map(({ tag }) => tag))
  const unknown = tags.filter((tag) => !known.has(tag))
  if (unknown.length > 0) throw new Refusal('valve/unknown', unknown.join(', '))
  return found
}

type Row = Awaited<ReturnType<typeof valvesOf>>[number]

function noteOf(valveId: string, row: Row['monitoring'], after: Monitoring) {
  const before = row === null ? {} : { kind: row.kind, note: row.note, since: row.since, rule: row.rule?.name ?? 'none' }
  const what = after.rule === 'none' ? 'taken out of its leak rule' : 'put under a leak rule'
  return { subject: 'monitoring', subjectId: valveId, what, before, after: { ...after } } as const
}
