// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import type { PrintJob } from './print-in-thread.ts'
import { labelSheets } from './sheets.ts'

const { labels, size } = workerData as PrintJob
const printed = await labelSheets(labels, size)
parentPort?.postMessage(printed, [printed.buffer])
