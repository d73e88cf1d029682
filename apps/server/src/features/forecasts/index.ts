import { showCalibration } from '@glandkeeper/contract/calibration'
import { askForFit, showFit } from '@glandkeeper/contract/forecasts'
import type { FastifyInstance } from 'fastify'
import { type Platform, route } from '../../platform/route.ts'
import { Calibrations } from './calibration.ts'
import type { Fits } from './fits.ts'
import { presentFit } from './present-fit.ts'

export { Fits } from './fits.ts'

export function forecastRoutes(app: FastifyInstance, platform: Platform, fits: Fits): void {
  const { store } = platform
  route(app, platform, showFit, ({ me }) => presentFit(store.read, me.siteId, fits.progressOf(me.siteId)))

  route(app, platform, askForFit, async ({ me }) => {
    void fits.ask(me.siteId, 'asked for')
    return presentFit(store.read, me.siteId, fits.progressOf(me.siteId))
  })

  const calibrations = new Calibrations(store)
  app.addHook('onClose', () => calibrations.close())
  route(app, platform, showCalibration, ({ me, query }) => calibrations.of(me.siteId, query.of, platform.clock()))
}
