import { openReader, type Reader } from './store.ts'
import { doJobs } from './worker.ts'

/** In a worker file: does jobs that read the register and never write, each through a reader of its own. */
export function doReadingJobs<Made>(work: (reader: Reader, asked: never, say: (share: number) => void) => Promise<Made>): void {
  doJobs(async (asked: { readonly databaseUrl: string }, say) => {
    const reader = await openReader(asked.databaseUrl)
    try {
      return await work(reader, asked as never, say)
    } finally {
      await reader.close()
    }
  })
}
