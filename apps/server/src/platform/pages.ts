import fastifyStatic from '@fastify/static'
import type { FastifyInstance } from 'fastify'
import { asProblem, Refusal, sendProblem } from './problem.ts'

/** Serves the built web app; an address that only the app knows gets the app, an API address never does. */
export async function servePages(app: FastifyInstance, folder: string): Promise<void> {
  await app.register(fastifyStatic, {
    root: folder,
    wildcard: false,
    cacheControl: false,
    setHeaders: (reply, file) => {
      // Built files carry their hash in their name and never change; the page that names them may change any time.
      void reply.setHeader('cache-control', /[\\/]assets[\\/]/.test(file) ? 'public, max-age=31536000, immutable' : 'no-cache')
    },
  })
  app.get('/*', async (request, reply) => {
    const wantsPage = request.headers.accept?.includes('text/html') ?? false
    if (!wantsPage || request.url.startsWith('/api/'))
      return sendProblem(reply, asProblem(new Refusal('request/not-found', request.url), request.id))
    return reply.sendFile('index.html')
  })
}
