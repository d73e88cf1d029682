import { calculators } from '@glandkeeper/bench/calculators'
import { benchEndpoint } from '@glandkeeper/bench/calculator'
import { showApiDocument } from '@glandkeeper/contract/api-document'
import { endpoints } from '@glandkeeper/contract/endpoints'
import type { FastifyInstance } from 'fastify'
import { type Platform, route } from '../../platform/route.ts'
import { apiDocument } from './api-document.ts'

export function apiDocumentRoutes(app: FastifyInstance, platform: Platform): void {
  const document = apiDocument({
    ...endpoints,
    ...Object.fromEntries(calculators.map((calculator) => [`bench ${calculator.name}`, benchEndpoint(calculator)])),
  })
  route(app, platform, showApiDocument, () => Promise.resolve(document))
}
