// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import { type PacksToPrint, printedPacks } from './print.ts'

const printed = await printedPacks(workerData as PacksToPrint)
parentPort?.postMessage(printed, [printed.buffer])
