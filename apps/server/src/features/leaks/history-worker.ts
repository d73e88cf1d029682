import { doJobs } from '../../platform/worker.ts'
import type { HistoryToPrint } from './history-to-print.ts'
import { printedHistory } from './printed-history.ts'

doJobs((job: HistoryToPrint) => printedHistory(job))
