// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import type { HistoryToPrint } from './history-to-print.ts'
import { printedHistory } from './printed-history.ts'

const printed = await printedHistory(workerData as HistoryToPrint)
parentPort?.postMessage(printed, [printed.buffer])
