// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { parentPort, workerData } from 'node:worker_threads'
import { fitPriors } from '../../packages/engines/dist/wear/fit.js'
import { loadSimulation, manyLives } from './simulated-lives.mjs'

const { base, watchedLives } = await loadSimulation('plant.ts')
const lives = manyLives(watchedLives(base, 41, workerData.count / 10), workerData.count)

// The lives are here, as the server's thread has them from the register; what follows is the fit alone.
parentPort.postMessage('begun')
const fit = fitPriors({ lives })
parentPort.postMessage(fit.ok ? 'done' : fit.problem.detail)
