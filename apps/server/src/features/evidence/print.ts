import { type EvidenceEntry, type EvidencePayload, MOST_ENTRIES_ON_PAPER } from '@glandkeeper/contract/evidence'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'
import type { Content, TableCell } from 'pdfmake/interfaces.js'
import { dayAt } from '../../platform/clock.ts'
import { paperColours } from '../../platform/paper/colours.ts'
import { tagLettering } from '../../platform/paper/lettering.ts'
import { pdfOf } from '../../platform/paper/pdf.ts'
import { figure, framed, heading, letter, ruled, soft } from '../../platform/paper/pieces.ts'
import { detailsOf } from './entry-details.ts'
import { scopeInWords } from './export.ts'
import { correctedBy } from './scope.ts'

const TITLE_ROOM = { width: 380, height: 30, largest: letter.tag }
const DIGITS_OF_HASH = 12

/** The entries on paper, each with what was put right beside it. The JSON is what is signed. */
export function printedEvidence(evidence: EvidencePayload, fingerprint: string): Promise<Uint8Array<ArrayBuffer>> {
  const { site, scope, madeAt, entries } = evidence
  const rows = withCorrections(entries)
  const shown = rows.slice(0, MOST_ENTRIES_ON_PAPER)
  const title = `Evidence: ${scopeInWords(scope)}`
  return pdfOf({
    size: 'A4',
    title,
    footer: `${site.name} · ${scopeInWords(scope)} · ${dayInWords(madeAt, site.timeZone)}`,
    content: [framed([head(evidence), about(evidence, fingerprint), ...cutShort(rows.length)]), table(shown, site.timeZone)],
  })
}

/** Each entry with what puts it right behind it, whenever that came; what corrects nothing that is here stays in its place. */
export function withCorrections(entries: readonly EvidenceEntry[]): EvidenceEntry[] {
  const here = new Set(entries.map(({ id }) => id))
  const behind = new Map<string, EvidenceEntry[]>()
  const own: EvidenceEntry[] = []
  for (const entry of entries) {
    const corrects = correctedBy(entry.body)
    if (corrects === null || !here.has(corrects) || corrects === entry.id) own.push(entry)
    else behind.set(corrects, [...(behind.get(corrects) ?? []), entry])
  }
  const told = (entry: EvidenceEntry): EvidenceEntry[] => [entry, ...(behind.get(entry.id) ?? []).flatMap(told)]
  return own.flatMap(told)
}

function head({ scope, site, madeBy, madeAt }: EvidencePayload): Content {
  const { size, lines } = tagLettering(scope.tag ?? scope.area ?? site.name, TITLE_ROOM)
  return {
    columns: [
      { stack: lines.map((line) => ({ ...figure(line, size), noWrap: true })), width: '*' },
      {
        stack: [heading('Evidence'), dayInWords(madeAt, site.timeZone), soft(`made by ${madeBy}`)],
        width: 130,
        alignment: 'right',
      },
    ],
  }
}

function about({ site, scope, chain, entries }: EvidencePayload, fingerprint: string): Content {
  const lettered = (text: string) => ({ text, font: 'Lettering' })
  const rows: [string, Content][] = [
    ['Site', site.name],
    ['What', `${scopeInWords(scope)}: ${entries.length} entries, times in ${site.timeZone}`],
    ['Chain of the site', `${chain.length} entries`],
    ['Its last hash', lettered(chain.head === '' ? 'none' : chain.head)],
    ['Key that signs', lettered(fingerprint)],
  ]
  const says =
    'This sheet is for reading. The signed export of the same entries is what proves them; its key has this fingerprint, ' +
    'which is to be compared with the one written down elsewhere.'
  return {
    stack: [
      ruled(
        [90, 440],
        rows.map(([name, value]) => [soft(name), value]),
      ),
      { ...soft(says), margin: [0, 3, 0, 0] },
    ],
  }
}

function cutShort(all: number): Content[] {
  if (all <= MOST_ENTRIES_ON_PAPER) return []
  const text = `Only the first ${MOST_ENTRIES_ON_PAPER} of ${all} entries are on this paper: the export as a file has all of them.`
  return [{ text, bold: true, color: paperColours.accent }]
}

// No column takes what is left: a word without a blank would push it off the paper.
const widths = [38, 62, 84, 84, 205, 62]
const titles = ['place', 'valve', 'taken, received', 'who, device', 'what it says', 'hash begins']

function table(entries: readonly EvidenceEntry[], timeZone: string): Content {
  return {
    margin: [0, 8, 0, 0],
    table: {
      widths,
      headerRows: 1,
      dontBreakRows: true,
      body: [titles.map(small), ...entries.map((entry) => rowOf(entry, timeZone))],
    },
    layout: {
      hLineWidth: (line) => (line === 1 ? 0.75 : 0.45),
      vLineWidth: () => 0,
      hLineColor: () => paperColours.soft,
      paddingLeft: () => 0,
      paddingRight: () => 5,
      paddingTop: () => 1.5,
      paddingBottom: () => 1.5,
    },
  }
}

const small = (text: string) => ({ ...soft(text), fontSize: letter.small })

/** What was put right is struck out, what puts it right stands under it and a little to the right. */
function rowOf(entry: EvidenceEntry, timeZone: string): TableCell[] {
  const { position, tag, takenAt, receivedAt, person, device, says, standsAs, hash, body } = entry
  const { takenBy } = detailsOf(body)
  const isStruck = standsAs === 'corrected' || standsAs === 'taken back'
  const lettered = (text: string): TableCell => ({ text, font: 'Lettering' })
  const said: Content = { text: says, ...(isStruck && { decoration: 'lineThrough', color: paperColours.soft }) }
  const mark: Content[] = standsAs === 'as entered' ? [] : [{ text: standsAs, bold: true, color: paperColours.accent }]
  return [
    lettered(String(position)),
    lettered(tag),
    { stack: [timeInWords(takenAt, timeZone), small(timeInWords(receivedAt, timeZone))], font: 'Lettering' },
    { stack: takenBy === undefined ? [person, small(device)] : [takenBy, small(`entered by ${person}, ${device}`)] },
    { stack: [...mark, said], margin: [standsAs === 'correction' ? 10 : 0, 0, 0, 0] },
    lettered(hash.slice(0, DIGITS_OF_HASH)),
  ]
}

function dayInWords(iso: string, timeZone: string): string {
  return format(parseISO(dayAt(Date.parse(iso), timeZone)), 'd MMMM yyyy')
}

const clocks = new Map<string, Intl.DateTimeFormat>()

function timeInWords(iso: string, timeZone: string): string {
  const clock = clocks.get(timeZone) ?? new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit' })
  clocks.set(timeZone, clock)
  const moment = Date.parse(iso)
  return Number.isNaN(moment) ? iso : `${dayAt(moment, timeZone)} ${clock.format(moment)}`
}
