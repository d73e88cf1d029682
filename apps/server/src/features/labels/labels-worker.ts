// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import { labelSheets, type LabelsToPrint } from './sheets.ts'

const printed = await labelSheets(workerData as LabelsToPrint)
parentPort?.postMessage(printed, [printed.buffer])
