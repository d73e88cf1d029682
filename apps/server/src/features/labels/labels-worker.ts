import { doJobs } from '../../platform/worker.ts'
import { labelSheets, type LabelsToPrint } from './sheets.ts'

doJobs((job: LabelsToPrint) => labelSheets(job))
