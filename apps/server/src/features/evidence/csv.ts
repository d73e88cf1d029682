import type { EvidenceEntry, EvidencePayload } from '@glandkeeper/contract/evidence'
import { csvOf } from '../../platform/spreadsheet.ts'
import { detailsOf } from './entry-details.ts'
import { correctedBy } from './scope.ts'

const headings = [
  'place in the chain',
  'valve',
  'taken at',
  'received at',
  'who',
  'signed in as',
  'device',
  'kind',
  'what it says',
  'how it stands',
  'puts right',
  'photos',
  'hash before',
  'hash',
  'id',
]

/** One row for each entry. The JSON is what is signed: this is for looking through. */
export function evidenceCsv({ entries }: EvidencePayload): string {
  const positions = new Map(entries.map(({ id, position }) => [id, position]))
  return csvOf(
    entries.map((entry) => rowOf(entry, positions)),
    headings,
  )
}

function rowOf(entry: EvidenceEntry, positions: ReadonlyMap<string, number>): (string | number)[] {
  const { position, tag, takenAt, receivedAt, person, device, kind, says, standsAs, before, hash, id, body } = entry
  const { takenBy, photos } = detailsOf(body)
  const corrects = correctedBy(body)
  const putsRight = corrects === null ? '' : (positions.get(corrects) ?? corrects)
  const who = takenBy ?? person
  return [position, tag, takenAt, receivedAt, who, person, device, kind, says, standsAs, putsRight, photos, before, hash, id]
}
