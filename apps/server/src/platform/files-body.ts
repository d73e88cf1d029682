import type { FastifyRequest } from 'fastify'
import { Refusal } from './problem.ts'

const MOST_FILES = 8

/**
 * A body of multipart/form-data as one object: the bytes of each file under the name of its field. Read by Node's own
 * reader, which takes seconds over thousands of tiny parts: they are counted first.
 */
export async function readFiles(request: FastifyRequest, body: Buffer): Promise<Readonly<Record<string, Uint8Array>>> {
  const parts = body.toString('latin1').match(/form-data/gi)?.length ?? 0
  if (parts > MOST_FILES) throw new Refusal('request/malformed', `a form of more than ${MOST_FILES} files`)
  const fields = await fieldsOf(request.headers['content-type'] ?? '', body)
  const files = new Map<string, Uint8Array>()
  for (const [name, value] of fields) {
    if (typeof value === 'string') throw new Refusal('request/malformed', `the field ${name} is not a file`)
    if (files.has(name)) throw new Refusal('request/malformed', `two files named ${name}`)
    files.set(name, new Uint8Array(await value.arrayBuffer()))
  }
  return Object.fromEntries(files)
}

async function fieldsOf(contentType: string, body: Buffer): Promise<FormData> {
  try {
    return await new Response(new Uint8Array(body), { headers: { 'content-type': contentType } }).formData()
  } catch {
    throw new Refusal('request/malformed', 'the form could not be read')
  }
}
