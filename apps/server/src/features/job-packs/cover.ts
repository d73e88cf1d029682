import { type TradeHours, trades } from '@glandkeeper/contract/outages'
import { formatFigure } from '@glandkeeper/units/figure'
import type { Content, ContentTable, ContentText } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import { firstLines, tagLettering } from '../../platform/paper/lettering.ts'
import type { Pack, PackSheet } from '../../platform/paper/packs.ts'
import { figure, framed, heading, letter, soft, warned } from '../../platform/paper/pieces.ts'
import { packId, whoDecides } from './before-work.ts'
import { dayInWords, outageDays } from './days-in-words.ts'
import { type Column, listed, lower } from './form.ts'
import { kitList } from './kit-list.ts'
import type { CoverRow, OutageCover } from './outage-to-pack.ts'

const HEAD = 44
const NAME_ROOM = { width: 420, height: 40, largest: 26 }

/** What lies on top of the packs of an outage: which it is, what it takes, which valve is on which page, and the kit. */
export function coverPack(cover: OutageCover): Pack {
  const { name, part, parts, printedOn, planName, kit } = cover
  const lettered = tagLettering(name, NAME_ROOM)
  const head = (): Content => ({
    columns: [
      { stack: lettered.lines.map((line) => ({ ...figure(line, lettered.size), noWrap: true })), width: '*' },
      { stack: [heading('Job packs'), `part ${part} of ${parts}`, soft(dayInWords(printedOn))], width: 120, alignment: 'right' },
    ],
  })
  const sheet = (content: PackSheet['content']): PackSheet => ({ head, headHeight: HEAD, content })
  const list = planName === null ? [] : [listOf(cover)]
  return {
    foot: `${firstLines(name, 40, 1).join('')} · cover · it does not authorise work`,
    sheets: [sheet([framed([about(cover)]), ...list]), ...(kit === null ? [] : [sheet(kitList(kit))])],
  }
}

function about(cover: OutageCover): Content {
  const { state, areaNames, planName } = cover
  const where = areaNames.length === 0 ? 'The whole site is down.' : `Down: ${areaNames.join(', ')}.`
  return {
    stack: [
      { text: outageDays(cover), fontSize: letter.heading, bold: true },
      where,
      ...(state === 'planned' ? [] : [{ text: `This outage is ${state}.`, bold: true, color: paperColours.accent }]),
      { text: planName === null ? withoutPlan : inPlan(cover, planName), margin: [0, 2, 0, 4] },
      warned([{ text: whoDecides, bold: true, color: paperColours.accent }]),
      ...(planName === null ? [] : [lower(hoursTable(cover), 6)]),
    ],
  }
}

const withoutPlan =
  'No plan of repacks is in use, so nobody has said which valves are repacked in it. Take a plan, and print again.'

function inPlan({ valves, parts }: OutageCover, planName: string): string {
  if (valves.length === 0) return `The plan in use, ${planName}, has no repack in it.`
  const many = valves.length === 1 ? 'one valve' : `${valves.length} valves`
  return `By the plan in use, ${planName}: ${many} to repack${parts === 1 ? '' : `, printed in ${parts} parts`}.`
}

const hours = (value: number): string => formatFigure(value, 'h', 1)

function hoursTable({ hours: there, valves }: OutageCover): ContentTable {
  const columns: Column[] = [
    { title: 'trade', width: 90 },
    { title: 'these repacks take', width: 80, isRight: true },
    { title: 'the outage has', width: 80, isRight: true },
    { title: '', width: 120 },
  ]
  const rows = trades.map((trade): Content[] => {
    const over = sumOf(valves, trade) - there[trade]
    const says = over > 0 ? { text: `${hours(over)} too many`, bold: true, color: paperColours.accent } : ''
    return [trade, right(hours(sumOf(valves, trade))), right(hours(there[trade])), says]
  })
  return listed(columns, rows)
}

function sumOf(valves: readonly CoverRow[], trade: keyof TradeHours): number {
  return valves.reduce((sum, { hours: taken }) => sum + taken[trade], 0)
}

// No column takes what is left: a word without a blank would push it off the paper.
const columnsOfList: Column[] = [
  { title: 'boundary', width: 80 },
  { title: 'tag', width: 60 },
  { title: 'description', width: 134 },
  { title: 'access', width: 63 },
  ...trades.map((trade) => ({ title: `${trade}, h`, width: 49, isRight: true })),
  { title: 'page', width: 32, isRight: true },
]

/** All valves of the outage on its first part; on each other part its own. */
function listOf({ valves, part }: OutageCover): Content {
  const shown = part === 1 ? valves : valves.filter((valve) => valve.part === part)
  const rows = shown.flatMap((valve, index) => {
    const above = shown[index - 1]
    return [...(above?.areaName === valve.areaName ? [] : [areaRow(valve.areaName)]), rowOf(valve, above, part)]
  })
  return lower(listed(columnsOfList, rows), 8)
}

function areaRow(name: string): Content[] {
  const across: ContentText & { colSpan: number } = { ...heading(name), colSpan: columnsOfList.length }
  return [across, ...columnsOfList.slice(1).map(() => '')]
}

function rowOf(valve: CoverRow, above: CoverRow | undefined, part: number): Content[] {
  const { tag, description, access, boundary } = valve
  const isSame = boundary !== '' && above?.boundary === boundary
  return [
    isSame ? soft('the same') : boundary === '' ? soft('by itself') : { text: boundary, font: 'Lettering' },
    { text: tag, font: 'Lettering', bold: true },
    { text: description, font: 'Lettering' },
    access,
    ...trades.map((trade) => right(valve.hours[trade] > 0 ? valve.hours[trade].toFixed(1) : '')),
    valve.part === part ? { ...lettering, pageReference: packId(tag), bold: true } : right(`part ${valve.part}`),
  ]
}

const lettering = { font: 'Lettering', alignment: 'right' } as const
const right = (text: string): Content => ({ text, ...lettering })
