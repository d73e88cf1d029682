import type { Kit, KitLine } from '@glandkeeper/contract/kits'
import { formatFigure } from '@glandkeeper/units/figure'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import type { Content } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import { heading, list, tickBox } from '../../platform/paper/pieces.ts'
import { type Column, listed, lower } from './form.ts'

/** From the store for all valves of an outage: how much of what, from which reel it is cut, and what is still open. */
export function kitList({ title, lines, open }: Kit): Content[] {
  const cut = lines.flatMap(({ name, reels }) => reels.map((reel) => reelRow(name, reel)))
  return [
    heading(`${title}, from the store`),
    listed(lineColumns, lines.map(lineRow)),
    ...(cut.length === 0 ? [] : [lower(heading('Cut from which reel, in this order'), 10), listed(reelColumns, cut)]),
    ...(open.length === 0 ? [] : [lower(heading('Not worked out'), 10), list(open.map(openInWords))]),
  ]
}

const lineColumns: Column[] = [
  { title: 'item', width: 170 },
  { title: 'needed', width: 54, isRight: true },
  { title: 'on hand', width: 54, isRight: true },
  { title: 'issued', width: 54, isRight: true },
  { title: 'for', width: 185 },
  { title: '', width: 12 },
]

function lineRow({ name, unit, needed, onHand, issued, tags, short }: KitLine): Content[] {
  const much = (value: number): Content => ({
    text: unit === 'm' ? formatFigure(value, 'm', 2) : formatFigure(value, '', 0),
    font: 'Lettering',
    alignment: 'right',
  })
  const item: Content[] = [name, ...short.map((says) => ({ text: says, color: paperColours.accent }))]
  return [{ stack: item }, much(needed), much(onHand), much(issued), { text: tags.join(', '), font: 'Lettering' }, tickBox()]
}

const reelColumns: Column[] = [
  { title: 'item', width: 110 },
  { title: 'reel, batch', width: 90 },
  { title: 'before', width: 58, isRight: true },
  { title: 'pieces', width: 201 },
  { title: 'left', width: 58, isRight: true },
  { title: '', width: 12 },
]

function reelRow(name: string, { label, batch, length, pieces, left, isScrap }: KitLine['reels'][number]): Content[] {
  const cut = pieces.map(
    (piece) => `${piece.tag}: ${piece.count} of ${millimetres(piece.length)}${piece.says === '' ? '' : ` (${piece.says})`}`,
  )
  return [
    name,
    `${label}, ${batch}`,
    { text: metres(length), font: 'Lettering', alignment: 'right' },
    { text: cut.join('\n'), font: 'Lettering' },
    { stack: [{ text: metres(left), font: 'Lettering' }, ...(isScrap ? ['scrap'] : [])], alignment: 'right' },
    tickBox(),
  ]
}

const metres = (length: number): string => formatFigure(length / 1000, 'm', 2)

const openInWords = ({ says, tags }: Kit['open'][number]): string => `${says}: ${tags.join(', ')}`
