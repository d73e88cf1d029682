import { calculators } from '@glandkeeper/bench/calculators'
import { endpoints } from '@glandkeeper/contract/endpoints'
import { showApiDocument } from '@glandkeeper/contract/api-document'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'

type Operation = {
  requestBody?: { content: Record<string, { schema: { properties?: object } }> }
  responses: Record<string, unknown>
  security?: unknown
}

it('the API document holds every endpoint, with what goes in, what comes out, and who may call', async () => {
  const server = await aServer()
  const document = await server.expectOk('fitter', showApiDocument, {})
  expect(document.openapi).toBe('3.1.0')
  const paths = document.paths as Record<string, Record<string, Operation>>
  for (const { method, path, status, who } of Object.values(endpoints)) {
    const operation = paths[path.replaceAll(/:(\w+)/g, '{$1}')]?.[method.toLowerCase()]
    expect([path, Object.keys(operation?.responses ?? {})]).toEqual([path, [String(status), 'default']])
    expect([path, operation?.security === undefined]).toEqual([path, who === 'anyone'])
  }
  for (const { name, input } of calculators) {
    const body = paths[`/api/bench/${name}`]?.['post']?.requestBody?.content['application/json']
    expect([name, Object.keys(body?.schema.properties ?? {})]).toEqual([name, Object.keys(input.shape)])
  }
})
