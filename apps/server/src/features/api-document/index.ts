import { calculators } from '@glandkeeper/bench/calculators'
import { benchEndpoint } from '@glandkeeper/bench/calculator'
import { showApiDocument } from '@glandkeeper/contract/api-document'
import { endpoints } from '@glandkeeper/contract/endpoints'
import type { FastifyInstance } from 'fastify'
import { type Platform, route } from '../../platform/route.ts'
import { apiDocument } from './api-document.ts'

export function apiDocumentRoutes(app: FastifyInstance, platform: Platform): void {
  // Written when first asked for: it takes longer than all the routes together, and few ever ask.
  let document: ReturnType<typeof apiDocument> | undefined
  route(app, platform, showApiDocument, () => {
    document ??= apiDocument({
      ...endpoints,
      ...Object.fromEntries(calculators.map((calculator) => [`bench ${calculator.name}`, benchEndpoint(calculator)])),
    })
    return Promise.resolve(document)
  })
}
