import { doJobs } from '../../platform/worker.ts'
import type { RoundSheet } from './known.ts'
import { printedSheet } from './sheet.ts'

doJobs((job: RoundSheet) => printedSheet(job))
