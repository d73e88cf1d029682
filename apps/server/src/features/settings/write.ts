import { type Setting, type SettingKey, settings } from '@glandkeeper/contract/settings'
import { quantities } from '@glandkeeper/contract/quantity'
import type { SignedIn } from '../../platform/auth.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Write } from '../../platform/store.ts'
import { figure } from './read.ts'

interface Confirmation {
  readonly key: SettingKey
  /** The figure on the page it was decided from. */
  readonly seen: number
  readonly value: number
}

/** Puts a setting of the writer's site on their word. The same figure confirms, another one changes. */
export async function confirm(write: Write, by: SignedIn, { key, seen, value }: Confirmation, now: Date): Promise<Setting> {
  const judged = settings[key].value.safeParse(value)
  if (!judged.success) {
    const detail = judged.error.issues[0]?.message ?? key
    throw new Refusal('setting/out-of-range', detail, [{ pointer: '#/value', detail }])
  }
  const { siteId, personId } = by
  const row = await write.siteSetting.findUnique({ where: { siteId_key: { siteId, key } } })
  const before = row?.value ?? settings[key].usually
  if (before !== seen) throw new Refusal('setting/changed-meanwhile', `you saw ${seen}, it is ${before} now`)
  await write.siteSetting.upsert({
    where: { siteId_key: { siteId, key } },
    create: { siteId, key, value, personId, confirmedAt: now },
    update: { value, personId, confirmedAt: now },
  })
  const label = quantities.get(settings[key].value)?.label ?? key
  const what = `setting ${value === before ? 'confirmed' : 'changed'}: ${label}`
  await noteChange(
    write,
    by,
    { subject: 'site', subjectId: siteId, what, before: { [key]: before }, after: { [key]: value } },
    now,
  )
  return { key, value: figure(value), confirmed: { by: by.name, at: now.toISOString() } }
}
