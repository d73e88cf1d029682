import type { ChangeSubject } from '@glandkeeper/contract/log'
import { groupedBy } from '../../platform/grouped-by.ts'
import type { Read } from '../../platform/store.ts'

interface About {
  readonly subject: string
  readonly subjectId: string
}
type Named = readonly { readonly id: string; readonly name: string }[]
type Where = { readonly siteId: string; readonly id: { readonly in: string[] } }

/** A database takes fewer than a thousand values in one question. */
export const MOST_SUBJECTS = 500

/** How a person calls each kind of thing; what is gone, or never had a name, has none. */
const namesOf: { readonly [Subject in ChangeSubject]: (read: Read, where: Where) => Promise<Named> } = {
  site: (read, { id }) => read.site.findMany({ where: { id }, select: { id: true, name: true } }),
  area: async (read, where) =>
    (await read.area.findMany({ where, select: { id: true, code: true } })).map(({ id, code: name }) => ({ id, name })),
  valve: tagsOf,
  // By its valve: that is what is put under a rule.
  monitoring: tagsOf,
  person: (read, where) => read.person.findMany({ where, select: { id: true, name: true } }),
  crew: (read, where) => read.crew.findMany({ where, select: { id: true, name: true } }),
  'days off': async (read, where) =>
    (await read.daysOff.findMany({ where, select: { id: true, reason: true } })).map(({ id, reason: name }) => ({ id, name })),
  round: (read, where) => read.round.findMany({ where, select: { id: true, name: true } }),
  plan: async (read, where) =>
    (await read.roundPlan.findMany({ where, select: { id: true, startsOn: true } })).map(({ id, startsOn }) => ({
      id,
      name: `from ${startsOn}`,
    })),
  calendar: async (read, where) =>
    (await read.calendarAddress.findMany({ where, select: { id: true, crew: { select: { name: true } } } })).map(
      ({ id, crew }) => ({ id, name: crew?.name ?? '' }),
    ),
  outage: (read, where) => read.outage.findMany({ where, select: { id: true, name: true } }),
  'repack plan': (read, where) => read.repackPlan.findMany({ where, select: { id: true, name: true } }),
  'stock item': (read, where) => read.stockItem.findMany({ where, select: { id: true, name: true } }),
  'leak rule': (read, where) => read.leakRule.findMany({ where, select: { id: true, name: true } }),
}

async function tagsOf(read: Read, where: Where): Promise<Named> {
  return (await read.valve.findMany({ where, select: { id: true, tag: true } })).map(({ id, tag: name }) => ({ id, name }))
}

/** The names of at most {@link MOST_SUBJECTS} things that changes are about, by subject and id. */
export async function subjectNames(read: Read, siteId: string, about: readonly About[]): Promise<(one: About) => string> {
  const names = new Map<string, string>()
  for (const [subject, some] of groupedBy(about, (one) => one.subject)) {
    const look = namesOf[subject as ChangeSubject] as (typeof namesOf)[ChangeSubject] | undefined
    const ids = [...new Set(some.map(({ subjectId }) => subjectId))]
    for (const { id, name } of (await look?.(read, { siteId, id: { in: ids } })) ?? []) names.set(`${subject} ${id}`, name)
  }
  return ({ subject, subjectId }) => names.get(`${subject} ${subjectId}`) ?? ''
}
