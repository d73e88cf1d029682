// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import { fitPriors } from '../../packages/engines/dist/wear/fit.js'

// The lives are here; what follows is the fit alone.
parentPort.postMessage('begun')
const fit = fitPriors({ lives: workerData })
parentPort.postMessage(fit.ok ? 'done' : fit.problem.detail)
