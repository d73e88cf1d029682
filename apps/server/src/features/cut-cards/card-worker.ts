import type { CutCard, PaperSize } from '@glandkeeper/contract/cut-cards'
import { doJobs } from '../../platform/worker.ts'
import { printedCard } from '../card-sheets/index.ts'

export interface CardToPrint {
  readonly card: CutCard
  readonly size: PaperSize
}

doJobs(({ card, size }: CardToPrint) => printedCard(card, size))
