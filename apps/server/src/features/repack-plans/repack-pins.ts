import type { BodyOf } from '@glandkeeper/contract/endpoint'
import type { pinRepack, unpinRepack } from '@glandkeeper/contract/repack-pins'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Write } from '../../platform/store.ts'
import { outageOfSlot, slotCalled } from './slots.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

export interface PinKept {
  readonly valveId: string
  readonly slotId: string
  readonly kind: 'in' | 'not in'
  readonly madeAt: Date
}

export async function repackPins(read: Pick<Read, 'repackPin'>, siteId: string): Promise<PinKept[]> {
  const rows = await read.repackPin.findMany({ where: { siteId }, orderBy: [{ madeAt: 'asc' }, { id: 'asc' }] })
  return rows.map(({ valveId, slotId, kind, madeAt }) => ({ valveId, slotId, kind: kind as PinKept['kind'], madeAt }))
}

/** A planner's word that holds for every plan after this one. */
export async function pinRepackOf(write: Write, by: By, { tag, slotId, kind }: BodyOf<typeof pinRepack>, now: Date) {
  const valve = await valveOf(write, by.siteId, tag)
  const outageId = outageOfSlot(slotId)
  if (outageId !== null && !(await write.outage.findFirst({ where: { id: outageId, siteId: by.siteId } })))
    throw new Refusal('outage/unknown', outageId)
  await putRepackPin(write, by, { valveId: valve.id, slotId, kind }, now)
  await noteChange(
    write,
    by,
    {
      subject: 'valve',
      subjectId: valve.id,
      what: `repack pinned: ${kind}`,
      before: {},
      after: { slot: await slotCalled(write, slotId) },
    },
    now,
  )
}

/** One valve is in one slot: a new pin in a slot takes the place of the one before. */
export async function putRepackPin(
  write: Write,
  { siteId, personId }: By,
  { valveId, slotId, kind }: Pick<PinKept, 'valveId' | 'slotId' | 'kind'>,
  now: Date,
): Promise<void> {
  const replaced = kind === 'in' ? { OR: [{ slotId }, { kind: 'in' }] } : { slotId }
  await write.repackPin.deleteMany({ where: { siteId, valveId, ...replaced } })
  await write.repackPin.create({ data: { id: newId(), siteId, valveId, slotId, kind, personId, madeAt: now } })
}

export async function unpinRepackOf(
  write: Write,
  by: By,
  { tag, slotId }: BodyOf<typeof unpinRepack>,
  now: Date,
): Promise<boolean> {
  const valve = await valveOf(write, by.siteId, tag)
  const { count } = await write.repackPin.deleteMany({ where: { siteId: by.siteId, valveId: valve.id, slotId } })
  if (count > 0)
    await noteChange(
      write,
      by,
      {
        subject: 'valve',
        subjectId: valve.id,
        what: 'pin of a repack removed',
        before: { slot: await slotCalled(write, slotId) },
        after: {},
      },
      now,
    )
  return count > 0
}

async function valveOf(write: Write, siteId: string, tag: string) {
  const valve = await write.valve.findUnique({ where: { siteId_tag: { siteId, tag } }, select: { id: true, retiredAt: true } })
  if (!valve || valve.retiredAt) throw new Refusal('valve/unknown', tag)
  return valve
}
