import { setTimeout as sleep } from 'node:timers/promises'
import { refusalFor } from '../../platform/problem.ts'

const WAITS_MS = [100, 300, 900, 2000]

/** Tries work again, after a short wait, while the register is busy or two changes met. The work must begin anew each time. */
export async function patiently<T>(work: () => Promise<T>): Promise<T> {
  for (const wait of WAITS_MS) {
    try {
      return await work()
    } catch (error) {
      if (!mayPass(error)) throw error
      await sleep(wait)
    }
  }
  return work()
}

function mayPass(error: unknown): boolean {
  const code = refusalFor(error)?.code
  return code === 'store/busy' || code === 'store/conflict'
}
