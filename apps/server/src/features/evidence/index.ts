import {
  cancelProof,
  checkEvidence,
  countEvidence,
  exportEvidence,
  exportEvidenceCsv,
  type EvidenceScope,
  printEvidence,
  proveChain,
  showChain,
  showSiteKey,
} from '@glandkeeper/contract/evidence'
import type { FastifyInstance, FastifyReply } from 'fastify'
import type { SignedIn } from '../../platform/auth.ts'
import { dayAt } from '../../platform/clock.ts'
import { plainLetters } from '../../platform/file-name.ts'
import { type Platform, route } from '../../platform/route.ts'
import { type Answering, answering } from './answering.ts'
import type { Proving, ProvingParts } from './proving.ts'
import { fingerprintOf } from './sealed-key.ts'
import { type Head, sealHead } from './seals.ts'
import { siteKey } from './site-key.ts'

export { Proving } from './proving.ts'

export function evidenceRoutes(
  app: FastifyInstance,
  platform: Platform,
  { databaseUrl, secret, proving }: Pick<ProvingParts, 'databaseUrl' | 'secret'> & { readonly proving: Proving },
): void {
  const { store, clock } = platform
  chainRoutes(app, platform, proving)
  exportRoutes(app, platform, secret, answering(store, databaseUrl))

  // Neither waits for an export that takes its time.
  const [counted, checked] = [answering(store, databaseUrl), answering(store, databaseUrl)]
  route(app, platform, countEvidence, ({ query, me }) => counted({ is: 'count', asked: askedBy(me, query, clock()) }))
  route(app, platform, checkEvidence, ({ body: bytes, me }) => checked({ is: 'check', siteId: me.siteId, bytes }))

  route(app, platform, showSiteKey, async ({ me }) => {
    const { publicKey, madeAt } = await siteKey(store, secret, me, clock())
    return { publicKey, fingerprint: fingerprintOf(publicKey), madeAt: madeAt.toISOString() }
  })
}

function chainRoutes(app: FastifyInstance, platform: Platform, proving: Proving): void {
  const { read } = platform.store
  route(app, platform, showChain, async ({ me: { siteId } }) => {
    const site = await read.site.findUniqueOrThrow({ where: { id: siteId } })
    const seal = await read.chainSeal.findFirst({ where: { siteId }, orderBy: { position: 'desc' } })
    const lastSeal = seal && { position: seal.position, madeAt: seal.madeAt.toISOString() }
    return { entries: site.chainLength, head: site.chainHead, ...proving.of(siteId), lastSeal }
  })

  route(app, platform, proveChain, ({ me }) => {
    void proving.start(me)
    return Promise.resolve({})
  })

  route(app, platform, cancelProof, async ({ me }) => ({ cancelled: await proving.cancel(me.siteId) }))
}

function exportRoutes(app: FastifyInstance, platform: Platform, secret: string, made: Answering): void {
  const { store, clock } = platform
  const seal = async (me: SignedIn, { position, hash }: Head) => {
    if (position > 0) await sealHead(store, me.siteId, await siteKey(store, secret, me, clock()), { position, hash }, clock())
  }
  const attach = async (reply: FastifyReply, scope: EvidenceScope, { siteId }: SignedIn, ending: 'json' | 'csv' | 'pdf') => {
    const { timeZone } = await store.read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } })
    const how = ending === 'pdf' ? 'inline' : 'attachment'
    void reply.header('content-disposition', `${how}; filename="${fileName(scope, dayAt(clock(), timeZone))}.${ending}"`)
  }

  route(app, platform, exportEvidence, async ({ query, me, reply }) => {
    const key = await siteKey(store, secret, me, clock())
    const privateKey = key.privateKey.export({ type: 'pkcs8', format: 'pem' }).toString()
    const { payload, signature, head } = await made({ is: 'signed', asked: askedBy(me, query, clock()), privateKey })
    await seal(me, head)
    await attach(reply, query, me, 'json')
    return { payload, signature, publicKey: key.publicKey }
  })

  route(app, platform, exportEvidenceCsv, async ({ query, me, reply }) => {
    const { text, head } = await made({ is: 'csv', asked: askedBy(me, query, clock()) })
    await seal(me, head)
    await attach(reply, query, me, 'csv')
    return text
  })

  route(app, platform, printEvidence, async ({ query, me, reply }) => {
    const fingerprint = fingerprintOf((await siteKey(store, secret, me, clock())).publicKey)
    const { bytes, head } = await made({ is: 'pdf', asked: askedBy(me, query, clock()), fingerprint })
    await seal(me, head)
    await attach(reply, query, me, 'pdf')
    return bytes
  })
}

function askedBy({ siteId, name }: SignedIn, scope: EvidenceScope, madeAt: Date) {
  return { siteId, scope, madeBy: name, madeAt }
}

/** @example fileName({ tag: 'BM-3307' }, '2026-11-29') // → 'evidence-BM-3307-2026-11-29' */
export function fileName({ tag, area, from, to }: EvidenceScope, today: string): string {
  const period = from === undefined && to === undefined ? [] : [from ?? 'begin', 'to', to ?? 'end']
  const parts = ['evidence', tag ?? area ?? 'all', ...period, today]
  return parts.map(plainLetters).join('-')
}
