import type { LeakHistory } from '@glandkeeper/contract/leaks'
import { leakCourse } from '@glandkeeper/drawings/leak-course'
import { beforeInWords, leakStateInWords } from '@glandkeeper/drawings/leak-words'
import { TZDate } from '@date-fns/tz'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'
import type { Content } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import { pdfOf, printed, roomOn } from '../../platform/paper/pdf.ts'
import { figure, heading, letter, ruled, soft } from '../../platform/paper/pieces.ts'
import type { HistoryToPrint } from './history-to-print.ts'

/** The newest so many are printed; the page and the export have all. */
export const MOST_PRINTED = 60

/** The leak history of a valve on paper: one axis, then every leak from sighting to fixed with what changed before it. */
export function printedHistory(known: HistoryToPrint): Promise<Uint8Array<ArrayBuffer>> {
  const { tag, history, course, siteName, madeOn } = known
  const newest = history.leaks.toReversed()
  const content: Content[] = [
    ...head(known),
    { ...printed(leakCourse({ ...course, width: roomOn('A4') })), margin: [0, 4, 0, 6] },
    ...(newest.length === 0 ? [soft('No leak of this valve is on record.')] : []),
    ...newest.slice(0, MOST_PRINTED).flatMap((leak) => leakBlock(leak, known)),
    ...(newest.length > MOST_PRINTED ? [soft(`${newest.length - MOST_PRINTED} earlier leaks are not printed.`)] : []),
  ]
  const footer = `Leak history ${tag} · ${siteName} · as of ${dayInWords(madeOn)} · it does not authorise work`
  return pdfOf({ size: 'A4', title: `Leak history ${tag}`, content, footer })
}

function head({ tag, description, about, history, timeZone }: HistoryToPrint): Content[] {
  const { watchedSince, leaks, daysLeaking, nipsPerDryMonth, leaksPerThousandMonths } = history
  const figures = [
    watchedSince !== null && `on record since ${dayOf(watchedSince, timeZone)}`,
    `${leaks.length} ${leaks.length === 1 ? 'leak' : 'leaks'}`,
    `${Math.round(daysLeaking)} days leaking`,
    nipsPerDryMonth !== null && `${nipsPerDryMonth.toFixed(2)} nips in a dry month`,
    leaksPerThousandMonths !== null && `${leaksPerThousandMonths.toFixed(0)} leaks in 1,000 valve-months`,
  ]
  return [
    { columns: [figure(tag, letter.tag), { ...heading('Leak history'), alignment: 'right' }] },
    { text: description, fontSize: letter.heading },
    soft(about),
    { text: figures.filter(Boolean).join(' · '), margin: [0, 3, 0, 0] },
    {
      ...soft(
        'Solid: read. Dashed: worked out from turns. Tick: half a turn. Drop: weep, drip, run; ring: damp. Square: only a meter. Bar: a leak stood open. Diamond: something stood out.',
      ),
      margin: [0, 3, 0, 0],
    },
  ]
}

function leakBlock(leak: LeakHistory['leaks'][number], { timeZone }: HistoryToPrint): Content[] {
  const isOpen = leak.state !== 'verified'
  const worst = leak.worst ?? (leak.worstScreening === null ? null : `${leak.worstScreening} ppmv`)
  const title = [dayOf(leak.openedAt, timeZone), worst, leakStateInWords(leak)].filter(Boolean).join(' · ')
  const putOff = leak.deferredUntil === null ? [] : [soft(`Put off until ${dayInWords(leak.deferredUntil)}.`)]
  const steps = leak.steps.map(({ at, what, says, by }) => [momentOf(at, timeZone), what, says, by])
  const before = beforeInWords(leak.before).map(({ name, says, standsOut }) => [
    { text: name, color: paperColours.soft },
    { text: says, bold: standsOut },
  ])
  return [
    {
      stack: [heading(title, isOpen ? paperColours.accent : paperColours.ink), ...putOff, ruled([78, 74, '*', 90], steps)],
      margin: [0, 8, 0, 0],
      unbreakable: steps.length < 20,
    },
    ...(before.length === 0
      ? []
      : [
          {
            stack: [
              { ...soft('What changed before'), margin: [0, 3, 0, 0] as [number, number, number, number] },
              ruled([150, '*'], before),
            ],
          },
        ]),
  ]
}

const dayInWords = (isoDay: string) => format(parseISO(isoDay), 'd MMM yyyy')
const dayOf = (moment: string, timeZone: string) => format(new TZDate(Date.parse(moment), timeZone), 'd MMM yyyy')
const momentOf = (moment: string, timeZone: string) => format(new TZDate(Date.parse(moment), timeZone), 'd MMM yyyy HH:mm')
