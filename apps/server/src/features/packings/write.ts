import type { addFamily, changeFamily, FamilyFigures } from '@glandkeeper/contract/packings'
import { figureNames } from '@glandkeeper/contract/packings'
import type { BodyOf } from '@glandkeeper/contract/endpoint'
import type { Fault } from '@glandkeeper/contract/problem'
import { packingFamilies } from '@glandkeeper/engines/packing/families'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Write } from '../../platform/store.ts'

type NewFamily = BodyOf<typeof addFamily>
type FamilyChange = BodyOf<typeof changeFamily>
type Figures = { readonly [Name in keyof FamilyFigures]: number }

/** Words an entry uses for packing nobody can name. */
const notFamilies = ['other', 'unknown']

/** Adds a family of the site's own; every figure of it is the word of whoever adds it. */
export async function addToSite(write: Write, by: SignedIn, family: NewFamily, now: Date): Promise<void> {
  const { siteId } = by
  const { name, form, description, cautions, figures } = family
  await refuseTakenName(write, siteId, name)
  refuseCrossedLimits(figures)
  const id = newId()
  const about = { form, description, cautions: JSON.stringify(cautions) }
  await write.packingFamily.create({ data: { id, siteId, name, isOwn: true, ...about, createdAt: now, updatedAt: now } })
  await putFigures(write, by, id, figures, now)
  const what = `packing family added: ${name}`
  const after = { name, form, description, cautions: cautions.join(', '), ...figures }
  await noteChange(write, by, { subject: 'site', subjectId: siteId, what, before: {}, after }, now)
}

/** Confirms or changes figures of a family that nobody else has changed since `revision`. */
export async function changeInSite(
  write: Write,
  by: SignedIn,
  name: string,
  { revision, figures, about }: FamilyChange,
  now: Date,
): Promise<void> {
  const { siteId } = by
  const row = await write.packingFamily.findUnique({ where: { siteId_name: { siteId, name } }, include: { figures: true } })
  const library = row?.isOwn ? undefined : packingFamilies.find((family) => family.name === name)
  if (!row?.isOwn && !library) throw new Refusal('packing/unknown', name)
  const present = row?.revision ?? 0
  if (present !== revision)
    throw new Refusal('packing/changed-meanwhile', `you changed revision ${revision}, the register has ${present}`)
  if (about && library) throw new Refusal('packing/not-own', name)

  const stands = new Map(row?.figures.map(({ figure, value }) => [figure, value]))
  const before = Object.fromEntries(
    figureNames.map((figure) => [figure, stands.get(figure) ?? library?.figures[figure].value]),
  ) as unknown as Figures
  const given = Object.fromEntries(Object.entries(figures).filter(([, value]) => value !== undefined)) as Partial<Figures>
  const named = Object.keys(given) as (keyof Figures)[]
  if (named.length === 0 && !about) return
  refuseCrossedLimits({ ...before, ...given })

  const fields = about && { ...about, cautions: JSON.stringify(about.cautions) }
  const id = row?.id ?? newId()
  await write.packingFamily.upsert({
    where: { siteId_name: { siteId, name } },
    create: { id, siteId, name, isOwn: false, createdAt: now, updatedAt: now },
    update: { ...fields, revision: revision + 1, updatedAt: now },
  })
  await putFigures(write, by, id, given, now)
  const was = {
    ...Object.fromEntries(named.map((figure) => [figure, before[figure]])),
    ...(fields && row && { form: row.form, description: row.description, cautions: row.cautions }),
  }
  const isSame = !about && named.every((figure) => before[figure] === given[figure])
  const what = `packing family ${isSame ? 'confirmed' : 'changed'}: ${name}`
  await noteChange(write, by, { subject: 'site', subjectId: siteId, what, before: was, after: { ...given, ...fields } }, now)
}

async function putFigures(write: Write, by: SignedIn, familyId: string, figures: Partial<Figures>, now: Date): Promise<void> {
  const { siteId, personId } = by
  for (const [figure, value] of Object.entries(figures)) {
    await write.packingFigure.upsert({
      where: { siteId_familyId_figure: { siteId, familyId, figure } },
      create: { siteId, familyId, figure, value, personId, confirmedAt: now },
      update: { value, personId, confirmedAt: now },
    })
  }
}

/** Two names that differ in capitals only are one name to a person. */
async function refuseTakenName(write: Write, siteId: string, name: string): Promise<void> {
  const folded = name.toLowerCase()
  const rows = await write.packingFamily.findMany({ where: { siteId }, select: { name: true } })
  const taken = [...packingFamilies, ...rows].map((family) => family.name).concat(notFamilies)
  if (taken.some((other) => other.toLowerCase() === folded)) throw new Refusal('packing/name-taken', name)
}

/** Less room than a person can measure between two limits is a slip of the pen. */
const LEAST_ROOM = { temperature: 1, acidity: 0.1 }

function refuseCrossedLimits(figures: Figures): void {
  const { lowestTemperature, highestTemperature, highestSteamTemperature, lowestPh, highestPh } = figures
  const fault = (figure: keyof Figures, high: number, low: number, room: number): Fault[] =>
    high - low >= room ? [] : [{ pointer: `#/figures/${figure}`, detail: `${high} leaves no room above ${low}` }]
  const faults = [
    ...fault('highestTemperature', highestTemperature, lowestTemperature, LEAST_ROOM.temperature),
    ...fault('highestSteamTemperature', highestSteamTemperature, lowestTemperature, LEAST_ROOM.temperature),
    ...fault('highestPh', highestPh, lowestPh, LEAST_ROOM.acidity),
  ]
  if (faults.length > 0) throw new Refusal('packing/impossible-limits', faults[0]?.detail, faults)
}
