// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import type { RoundSheet } from './known.ts'
import { printedSheet } from './sheet.ts'

const printed = await printedSheet(workerData as RoundSheet)
parentPort?.postMessage(printed, [printed.buffer])
