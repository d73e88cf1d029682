// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import { openReader } from '../../platform/store.ts'
import { fitOfLives } from './fit-of-lives.ts'
import { livesOfSite } from './lives-of-site.ts'

/** Runs in a thread of its own: reads, computes, and hands the fit back. It never writes. */
async function work({ databaseUrl, siteId }: { databaseUrl: string; siteId: string }): Promise<void> {
  const reader = await openReader(databaseUrl)
  try {
    const lives = await livesOfSite(reader.read, siteId)
    const body = fitOfLives(lives, (share) => parentPort?.postMessage({ share }))
    parentPort?.postMessage({ body })
  } finally {
    await reader.close()
  }
}

void work(workerData as { databaseUrl: string; siteId: string })
