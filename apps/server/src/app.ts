import { randomUUID } from 'node:crypto'
import cookie from '@fastify/cookie'
import helmet from '@fastify/helmet'
import Fastify, { type FastifyInstance } from 'fastify'
import type { Config } from './config.ts'
import { areaRoutes } from './features/areas/index.ts'
import { apiDocumentRoutes } from './features/api-document/index.ts'
import { benchRoutes } from './features/bench/index.ts'
import { boardRoutes } from './features/board/index.ts'
import { calendarRoutes } from './features/calendars/index.ts'
import { crewRoutes } from './features/crews/index.ts'
import { cutCardRoutes } from './features/cut-cards/index.ts'
import { daysOffRoutes } from './features/days-off/index.ts'
import { dueLookRoutes } from './features/due-looks/index.ts'
import { eventRoutes } from './features/events/index.ts'
import { evidenceRoutes, Proving } from './features/evidence/index.ts'
import { forecastRoutes, Fits } from './features/forecasts/index.ts'
import { healthRoutes } from './features/health/index.ts'
import { importRoutes, ImportRuns } from './features/imports/index.ts'
import { jobPackRoutes } from './features/job-packs/index.ts'
import { kitRoutes } from './features/kits/index.ts'
import { labelRoutes } from './features/labels/index.ts'
import { LeakStudies, leakStudyRoutes } from './features/leak-study/index.ts'
import { leakLossRoutes } from './features/leak-losses/index.ts'
import { leakRuleRoutes } from './features/leak-rules/index.ts'
import { LeakKeeping, leakRoutes } from './features/leaks/index.ts'
import { logRoutes } from './features/log/index.ts'
import { outageRoutes } from './features/outages/index.ts'
import { packingLifeRoutes } from './features/packing-lives/index.ts'
import { packingRoutes } from './features/packings/index.ts'
import { peopleRoutes } from './features/people/index.ts'
import { photoRoutes } from './features/photos/index.ts'
import { pocketRoutes } from './features/pocket/index.ts'
import { RepackPlanning, repackPlanRoutes } from './features/repack-plans/index.ts'
import { planningOf, roundPlanRoutes } from './features/round-plans/index.ts'
import { roundRoutes } from './features/rounds/index.ts'
import { roundSheetRoutes } from './features/round-sheets/index.ts'
import { settingRoutes } from './features/settings/index.ts'
import { siteRoutes } from './features/sites/index.ts'
import { stockRoutes } from './features/stock/index.ts'
import { valveRoutes } from './features/valves/index.ts'
import type { Clock } from './platform/clock.ts'
import { readFiles } from './platform/files-body.ts'
import { asProblem, Refusal, registerProblems, sendProblem } from './platform/problem.ts'
import type { Platform } from './platform/route.ts'
import type { Store } from './platform/store.ts'
import { servePages } from './platform/pages.ts'

const MOST_JSON_BYTES = 1024 * 1024

export interface AppParts {
  readonly store: Store
  /** For worker threads, which read by themselves. */
  readonly databaseUrl: string
  readonly clock: Clock
  readonly secret: string
  readonly logLevel: Config['logLevel']
  /** The word of a proxy in front is taken for address and protocol. */
  readonly behindProxy?: boolean
  /** Certificate and key; null serves plain http. */
  readonly https?: { readonly cert: string; readonly key: string } | null
  /** Folder of the built web app; null serves the API alone. */
  readonly pages: string | null
}

/** The whole server, not yet listening. */
export async function buildApp({
  store,
  databaseUrl,
  clock,
  secret,
  logLevel,
  behindProxy = false,
  https = null,
  pages,
}: AppParts): Promise<{
  app: FastifyInstance
  imports: ImportRuns
  fits: Fits
  leakKeeping: LeakKeeping
  leakStudies: LeakStudies
}> {
  const app = Fastify({
    // The type of the app says nothing of the wire under it.
    ...(https && ({ https } as object)),
    logger: { level: logLevel },
    bodyLimit: MOST_JSON_BYTES,
    genReqId: () => randomUUID(),
    trustProxy: behindProxy,
    frameworkErrors: (_error, request, reply) => {
      sendProblem(reply, asProblem(new Refusal('request/malformed', 'the address could not be read'), request.id))
    },
  })
  const platform: Platform = { store, clock }
  const fits = new Fits({ store, databaseUrl, clock, log: app.log })
  const planning = planningOf({ store, databaseUrl, clock, log: app.log })
  const repackPlanning = new RepackPlanning({ store, databaseUrl, clock, log: app.log })
  const leakKeeping = new LeakKeeping({ store, clock, log: app.log })
  const leakStudies = new LeakStudies({ store, databaseUrl, clock, log: app.log })
  app.addHook('onClose', () => leakStudies.close())
  const proving = new Proving({ store, databaseUrl, clock, secret, log: app.log })
  app.addHook('onClose', () => Promise.all([planning.close(), repackPlanning.close(), leakKeeping.close(), proving.close()]))
  const imports = new ImportRuns(store, clock, app.log, (siteId) => void fits.ask(siteId, 'after an import'))
  const renew = (siteId: string) => void fits.renew(siteId)
  registerProblems(app)
  app.setNotFoundHandler((request, reply) =>
    sendProblem(reply, asProblem(new Refusal('request/not-found', request.url), request.id)),
  )
  app.decorateRequest('signedIn', null)
  app.addContentTypeParser('text/csv', { parseAs: 'buffer' }, (_request, body, done) => done(null, body))
  app.addContentTypeParser('application/octet-stream', { parseAs: 'buffer' }, (_request, body, done) => done(null, body))
  app.addContentTypeParser('multipart/form-data', { parseAs: 'buffer' }, readFiles)
  // Plain http on a plant's own network is usual: nothing may insist on https by itself.
  await app.register(helmet, {
    strictTransportSecurity: false,
    contentSecurityPolicy: {
      directives: {
        upgradeInsecureRequests: null,
        scriptSrc: ["'self'", "'wasm-unsafe-eval'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
      },
    },
  })
  await app.register(cookie, { secret })

  healthRoutes(app, platform)
  apiDocumentRoutes(app, platform)
  benchRoutes(app, platform)
  await peopleRoutes(app, platform)
  siteRoutes(app, platform, renew)
  areaRoutes(app, platform)
  valveRoutes(app, platform)
  cutCardRoutes(app, platform)
  labelRoutes(app, platform)
  eventRoutes(app, platform)
  roundRoutes(app, platform)
  crewRoutes(app, platform)
  daysOffRoutes(app, platform)
  roundPlanRoutes(app, platform, planning)
  dueLookRoutes(app, platform)
  roundSheetRoutes(app, platform)
  calendarRoutes(app, platform)
  outageRoutes(app, platform)
  repackPlanRoutes(app, platform, repackPlanning)
  stockRoutes(app, platform)
  kitRoutes(app, platform)
  jobPackRoutes(app, platform)
  pocketRoutes(app, platform)
  photoRoutes(app, platform)
  packingRoutes(app, platform)
  settingRoutes(app, platform, renew)
  boardRoutes(app, platform)
  leakRoutes(app, platform)
  leakRuleRoutes(app, platform, () => void leakKeeping.catchUp())
  leakLossRoutes(app, platform)
  leakStudyRoutes(app, platform, leakStudies)
  packingLifeRoutes(app, platform, leakStudies)
  importRoutes(app, platform, imports)
  forecastRoutes(app, platform, fits)
  evidenceRoutes(app, platform, { databaseUrl, secret, proving })
  logRoutes(app, platform)
  if (pages !== null) await servePages(app, pages)
  return { app, imports, fits, leakKeeping, leakStudies }
}
