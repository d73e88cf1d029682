import type { FastifyInstance } from 'fastify'
import {
  applyImport,
  badRowsOfImport,
  cancelImport,
  type ImportRun,
  type ImportKind,
  listImports,
  mapImport,
  showImport,
  startImport,
} from '@glandkeeper/contract/imports'
import type { Prisma } from '../../generated/sqlite/client.ts'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { plainLetters } from '../../platform/file-name.ts'
import { type Platform, route } from '../../platform/route.ts'
import type { Store } from '../../platform/store.ts'
import { importsOf, importWithId } from './queries.ts'
import type { ImportRuns } from './runs.ts'
import { refuseUnclearColumns, refuseUnknownFields } from './read-headings.ts'

export { ImportRuns } from './runs.ts'

export function importRoutes(app: FastifyInstance, platform: Platform, runs: ImportRuns): void {
  const { store, clock } = platform
  const shown = async (me: SignedIn, importId: string): Promise<ImportRun> => importWithId(store.read, me.siteId, importId)

  route(app, platform, listImports, async ({ me }) => ({ imports: await importsOf(store.read, me.siteId) }))
  route(app, platform, showImport, ({ params, me }) => shown(me, params.importId))

  route(app, platform, startImport, async ({ query, body, me }) => {
    const importId = await keepFile(store, me, query, body, clock())
    runs.check(importId)
    return shown(me, importId)
  })

  route(app, platform, mapImport, async ({ params, body, me }) => {
    const run = await shown(me, params.importId)
    refuseUnless(run, ['checked', 'unreadable'])
    refuseUnknownFields(run.kind, body.columns)
    refuseUnclearColumns(run.kind, body.columns)
    await setStep(store, run, { ...begun(clock()), step: 'checking', columns: JSON.stringify(body.columns) })
    runs.check(run.importId)
    return shown(me, run.importId)
  })

  route(app, platform, applyImport, async ({ params, body, me }) => {
    const run = await shown(me, params.importId)
    refuseUnless(run, ['checked'])
    if (body.mode === 'whole file' && run.badCount > 0)
      throw new Refusal('import/has-faults', `${run.badCount} of ${run.rowCount} rows have faults; nothing was written`)
    await setStep(store, run, { ...begun(clock()), step: 'writing', mode: body.mode })
    runs.write(run.importId)
    return shown(me, run.importId)
  })

  route(app, platform, cancelImport, async ({ params, me }) => {
    const run = await shown(me, params.importId)
    refuseUnless(run, ['checking', 'writing', 'checked', 'unreadable'])
    // Whichever server works on it reads this between portions, and as it ends.
    if (run.step === 'checking' || run.step === 'writing') await setStep(store, run, { cancelAsked: true })
    else await setStep(store, run, { step: 'cancelled', detail: 'nothing was written', finishedAt: clock() })
    return shown(me, run.importId)
  })

  route(app, platform, badRowsOfImport, async ({ params, me, reply }) => {
    const run = await shown(me, params.importId)
    const kept = await store.read.importRun.findUnique({ where: { id: run.importId }, select: { badRows: true } })
    if (!kept?.badRows) throw new Refusal('import/not-ready', 'the file is still being checked')
    void reply.header('content-disposition', `attachment; filename="bad-rows-of-${plainLetters(run.fileName)}"`)
    return Buffer.from(kept.badRows).toString('utf8')
  })
}

async function keepFile(
  store: Store,
  me: SignedIn,
  { kind, fileName }: { kind: ImportKind; fileName: string },
  content: Uint8Array,
  now: Date,
): Promise<string> {
  const id = newId()
  const data = {
    id,
    siteId: me.siteId,
    personId: me.personId,
    kind,
    fileName,
    content: Buffer.from(content),
    columns: '[]',
    step: 'checking',
    startedAt: now,
    touchedAt: now,
  }
  await store.write((write) => write.importRun.create({ data }))
  return id
}

/** What a check or a write begins with: an earlier wish to cancel, or word of an earlier try, is over. */
function begun(now: Date) {
  return { cancelAsked: false, detail: '', touchedAt: now, finishedAt: null }
}

async function setStep(store: Store, run: ImportRun, data: Prisma.ImportRunUpdateManyMutationInput): Promise<void> {
  // Only from the step that was seen: of two people who press the button one is told.
  const { count } = await store.write((write) =>
    write.importRun.updateMany({ where: { id: run.importId, step: run.step }, data }),
  )
  if (count === 0) throw new Refusal('import/not-ready', 'the import moved on meanwhile')
}

function refuseUnless(run: ImportRun, steps: readonly ImportRun['step'][]): void {
  if (!steps.includes(run.step)) throw new Refusal('import/not-ready', `it is ${run.step}`)
}
