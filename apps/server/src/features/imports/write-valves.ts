import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { changeRow } from '../../platform/register-change.ts'
import type { Write } from '../../platform/store.ts'
import { createArea } from '../areas/index.ts'
import { forecastBasis, rebuildState, writeEmptyStates } from '../glands/index.ts'
import { flat, rowOf } from '../valves/index.ts'
import type { ValvePlan } from './judge-valves.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

/** Writes valves judged in the caller's transaction, so that nothing was saved since: new ones together, changed ones each with its own note. */
export async function writeValves(write: Write, by: By, plans: readonly ValvePlan[], now: Date): Promise<void> {
  const areaIds = await areasFor(write, by, plans, now)
  const areaIdOf = (plan: ValvePlan) => areaIds.get(plan.input.areaCode) ?? ''
  const added = plans
    .filter((plan) => plan.existing === null)
    .map((plan) => ({
      input: plan.input,
      row: {
        id: newId(),
        siteId: by.siteId,
        ...rowOf(plan.input, areaIdOf(plan)),
        revision: 1,
        createdAt: now,
        updatedAt: now,
        retiredAt: null,
      },
    }))
  await write.insertRows(
    'valve',
    added.map(({ row }) => row),
  )
  await writeEmptyStates(
    write,
    by.siteId,
    added.map(({ row }) => row),
    now,
  )
  const basis = await forecastBasis(write, by.siteId, now)
  const notes = added.map(({ input, row }) =>
    changeRow(by, { subject: 'valve', subjectId: row.id, what: 'valve added by import', before: {}, after: flat(input) }, now),
  )
  for (const plan of plans) {
    if (plan.existing === null || plan.unchanged) continue
    const { valveId, revision, input } = plan.existing
    await write.valve.update({
      where: { id: valveId },
      data: { ...rowOf(plan.input, areaIdOf(plan)), revision: revision + 1, updatedAt: now },
    })
    await rebuildState(write, by.siteId, valveId, basis)
    notes.push(
      changeRow(
        by,
        { subject: 'valve', subjectId: valveId, what: 'valve changed by import', before: flat(input), after: flat(plan.input) },
        now,
      ),
    )
  }
  await write.insertRows('register_change', notes)
}

/** The areas the valves are in; a code the register does not have yet becomes an area, next in the walk. */
async function areasFor(write: Write, by: By, plans: readonly ValvePlan[], now: Date): Promise<Map<string, string>> {
  const areas = await write.area.findMany({ where: { siteId: by.siteId } })
  const ids = new Map(areas.map((area) => [area.code, area.id]))
  let walkPosition = Math.max(0, ...areas.map((area) => area.walkPosition))
  for (const { input, areaName } of plans) {
    if (ids.has(input.areaCode)) continue
    walkPosition += 10
    ids.set(
      input.areaCode,
      await createArea(
        write,
        by,
        {
          code: input.areaCode,
          name: areaName ?? input.areaCode,
          walkPosition: Math.min(walkPosition, 100_000),
          level: input.level,
        },
        now,
      ),
    )
  }
  return ids
}
