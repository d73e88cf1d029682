import { firstLines } from '../../platform/paper/lettering.ts'
import { type Pack, pdfOfPacks, type PackSheet } from '../../platform/paper/packs.ts'
import { framed } from '../../platform/paper/pieces.ts'
import { cardUnderTitle } from '../card-sheets/index.ts'
import { beforeWork } from './before-work.ts'
import { coverPack } from './cover.ts'
import { firstHead, headOf, usualHead } from './head.ts'
import type { OutageCover } from './outage-to-pack.ts'
import type { ValvePack } from './pack-of-valve.ts'
import { record } from './record-sheet.ts'
import { partsAndSteps } from './steps-sheet.ts'

/** In parts of its size. The whole of a long tag is in the head. */
const FOOT_TAG = 20

export interface PacksToPrint {
  readonly title: string
  readonly packs: readonly ValvePack[]
  /** Said at the head of every page of a valve. */
  readonly note: string | null
  /** Null where a valve was asked for by itself. */
  readonly outage: OutageCover | null
}

export function printedPacks({ title, packs, note, outage }: PacksToPrint): Promise<Uint8Array<ArrayBuffer>> {
  const ofValves = packs.map((pack) => packOf(pack, note))
  return pdfOfPacks(title, outage === null ? ofValves : [coverPack(outage), ...ofValves])
}

/** A form, the card with the work in order, and a record: four pages as a rule. */
function packOf(pack: ValvePack, note: string | null): Pack {
  const { tag } = pack.card
  const sheet = (name: string, content: PackSheet['content'], size = usualHead): PackSheet => ({
    ...headOf(pack, { name, note: note ?? 'Job pack' }, size),
    content: [framed(content)],
  })
  return {
    foot: `Job pack ${firstLines(tag, FOOT_TAG, 1).join('')} · it does not authorise work`,
    sheets: [
      sheet('Before work begins', beforeWork(pack), firstHead),
      // One after the other: a card that is long leaves room on its second page.
      sheet('Cut card and steps', [...cardUnderTitle(pack.card, 'A4'), ...partsAndSteps(pack)]),
      sheet('Record', record(pack)),
    ],
  }
}
