import type { Content, TableCell } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import { figure, heading, letter, soft } from '../../platform/paper/pieces.ts'
import { cautionBlocks } from '../card-sheets/index.ts'
import { type Column, blankRows, grid, lower } from './form.ts'
import type { ValvePack } from './pack-of-valve.ts'

/** Said where the form is, and on the cover. */
export const whoDecides =
  'This program prints the form and authorises nothing. The permit, the site procedure, the local code and qualified people decide.'

const NO_BREAK_SPACE = '\u00a0'
const POINTS_TO_ISOLATE = 8

/** Before work begins: which valve, what is dangerous about it, and the isolation, to be filled in. */
export function beforeWork(pack: ValvePack): Content[] {
  return [whichValve(pack), ...cautionBlocks(pack.card, 'A4'), isolation(pack), proved()]
}

/** What a cover names the first page of a pack by. */
export const packId = (tag: string): string => `pack ${tag}`

function whichValve({ card, valve }: ValvePack): Content {
  const moves = valve.stemMovement === null ? 'stem movement not recorded' : `stem ${valve.stemMovement}`
  const facts: [string, string, string, string][] = [
    ['Where', `${card.areaName}, level ${valve.level}`, 'Service', card.service],
    ['Access', valve.access, 'Fluid', card.fluid === '' ? card.phase : `${card.fluid} (${card.phase})`],
    ['Valve', `${valve.valveKind}, ${moves}`, 'Temperature', measured(card.temperature, '°C')],
    ['Packing', card.family ?? 'not recorded', 'Pressure', measured(card.pressure, 'bar above atmosphere')],
  ]
  const what = card.description === '' ? 'no description in the register' : card.description
  const rows: TableCell[][] = facts.map(([name, says, other, also]) => [soft(name), said(says), soft(other), said(also)])
  return {
    stack: [
      { ...figure(what, letter.heading), id: packId(card.tag), margin: [0, 0, 0, 3] },
      {
        table: { widths: [46, 208, 62, 208], body: rows },
        layout: { defaultBorder: false, paddingLeft: () => 0, paddingTop: () => 0.5, paddingBottom: () => 0.5 },
      },
    ],
  }
}

const said = (text: string): TableCell => ({ text, font: 'Lettering', fontSize: letter.heading })

function measured(value: number | null, unit: string): string {
  return value === null ? 'not recorded: ask' : `${value}${NO_BREAK_SPACE}${unit}`
}

const pointColumns: Column[] = [
  { title: 'isolation point', width: '*' },
  { title: 'position', width: 62 },
  { title: 'lock number', width: 62 },
  { title: 'tag number', width: 62 },
  { title: 'isolated by', width: 88 },
  { title: 'date and time', width: 74 },
]

function isolation(pack: ValvePack): Content {
  return {
    stack: [
      heading('Isolation: filled in by the authorised person'),
      { text: whoDecides, bold: true, color: paperColours.accent, margin: [0, 0, 0, 3] },
      ...togetherInWords(pack).map((text) => ({ text, font: 'Lettering' })),
      lower(grid(pointColumns, blankRows(POINTS_TO_ISOLATE), 18), 3),
    ],
  }
}

/** Names every valve of the boundary. A form may be shared, proof at each gland may not. */
function togetherInWords({ valve: { isolationBoundary, isolatesOnLine }, isolatedWith }: ValvePack): string[] {
  const when = isolatesOnLine ? 'May be isolated while the plant runs.' : 'By the register, only an outage isolates it.'
  if (isolationBoundary === '') return [`The register names no boundary: it is isolated by itself. ${when}`]
  if (isolatedWith.length === 0) return [`Boundary: ${isolationBoundary}, no other valve in it. ${when}`]
  return [
    `Boundary: ${isolationBoundary}. Isolated together with it: ${isolatedWith.join(', ')}. ${when} ` +
      'Points that are written on the sheet of another of these valves: name that sheet. Zero is proved here all the same.',
  ]
}

const checkColumns: Column[] = [
  { title: '', width: 168 },
  { title: 'where, how', width: '*' },
  { title: 'by', width: 88 },
  { title: 'date and time', width: 74 },
]
const checks = ['drained at', 'vented at', 'proved zero at', 'isolation tried before loosening', 'work done, handed back by']

function proved(): Content {
  return { stack: [grid(checkColumns, checks, 16)] }
}
