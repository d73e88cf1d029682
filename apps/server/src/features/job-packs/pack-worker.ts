import { doJobs } from '../../platform/worker.ts'
import { type PacksToPrint, printedPacks } from './print.ts'

doJobs((job: PacksToPrint) => printedPacks(job))
