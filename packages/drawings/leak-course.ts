import type { LeakGrade } from '@glandkeeper/contract/events'
import type { ReservePoint } from '@glandkeeper/contract/reserve'
import { type Drawing, lettering, line, path, rectangle, type Shape } from './drawing.ts'

/** Everything of one valve on one time axis, moments in ISO. Labels of the axis are the caller's: it knows the calendar. */
export interface LeakCourse {
  readonly from: string
  readonly to: string
  readonly times: readonly { readonly at: string; readonly label: string }[]
  readonly lives: readonly { readonly from: string | null; readonly family: string | null }[]
  readonly points: readonly ReservePoint[]
  /** Mean of both nuts; below nought where they were slackened. */
  readonly nips: readonly { readonly at: string; readonly turns: number }[]
  /** Null: only a meter showed it. */
  readonly sightings: readonly { readonly at: string; readonly grade: LeakGrade | null }[]
  /** Times a leak stood open; null while it does. */
  readonly open: readonly { readonly from: string; readonly to: string | null }[]
  readonly findings: readonly { readonly at: string }[]
  /** Place in `open` of the leak that is looked at: marked through all rows. */
  readonly shown?: number | null
  readonly width: number
}

const LEFT = 66
const RIGHT = 12
const TOP = 34
const RESERVE = 150
const ROW = { nips: TOP + RESERVE + 44, leaks: TOP + RESERVE + 108, findings: TOP + RESERVE + 138 } as const
const BOTTOM = ROW.findings + 14
const PX_PER_LETTER = 6.6
const HALF_TURN = 16
/** A leak of an hour is still hit by a finger. */
const LEAST_TARGET = 24
const drops: Readonly<Record<LeakGrade, number>> = { dry: 0, damp: 0, weep: 12, drip: 24, run: 36 }

interface Frame {
  readonly x: (isoMoment: string) => number
  readonly y: (mm: number) => number
  readonly right: number
}

/** Reserve, nips, leaks and what stood out, one under the other, so that a cause stands over its effect. */
export function leakCourse(course: LeakCourse): Drawing {
  const frame = frameOf(course)
  return {
    width: course.width,
    height: BOTTOM + 28,
    says: inWords(course),
    shapes: [
      ...shownLeak(course, frame),
      ...axes(course, frame),
      ...lives(course, frame),
      ...stair(course, frame),
      ...nips(course, frame),
      ...leaks(course, frame),
      ...course.findings.map(({ at }) => path(diamond(frame.x(at), ROW.findings - 4), 'out')),
    ],
  }
}

/** Where each leak of `open` is hit, in px of the drawing: as high as its row, and wide enough. */
export function leakTargets(course: LeakCourse): { left: number; top: number; width: number; height: number }[] {
  const frame = frameOf(course)
  return course.open.map((spell) => {
    const [from, to] = endsOf(spell, course, frame)
    const width = Math.max(to - from, LEAST_TARGET)
    return { left: (from + to - width) / 2, top: ROW.nips + 8, width, height: ROW.findings - ROW.nips }
  })
}

function frameOf({ from, to, points, width }: LeakCourse): Frame {
  const [start, end] = [Date.parse(from), Date.parse(to)]
  const right = width - RIGHT
  const known = points.flatMap(({ reserve }) => reserve ?? [])
  const [low, high] = [Math.min(0, ...known), Math.max(2, ...known)]
  return {
    x: (isoMoment) => LEFT + ((Date.parse(isoMoment) - start) / Math.max(end - start, 1)) * (right - LEFT),
    y: (mm) => TOP + RESERVE * (1 - (mm - low) / (high - low)),
    right,
  }
}

function axes({ times, points }: LeakCourse, { x, y, right }: Frame): Shape[] {
  const highest = Math.max(2, ...points.flatMap(({ reserve }) => reserve ?? []))
  const step = highest > 20 ? 10 : highest > 8 ? 5 : 2
  const levels = Array.from({ length: Math.floor(highest / step) + 1 }, (_, place) => place * step)
  const named = (says: string, at: number) => lettering(says, [LEFT - 6, at + 4], { anchor: 'end', paint: 'soft', size: 12 })
  return [
    ...levels.flatMap((mm) => [path(line([LEFT, y(mm)], [right, y(mm)]), 'hair'), named(`${mm} mm`, y(mm))]),
    ...Object.entries(ROW).flatMap(([name, at]) => [path(line([LEFT, at], [right, at]), 'hair'), named(name, at)]),
    path(line([LEFT, BOTTOM], [right, BOTTOM]), 'thin'),
    ...times.flatMap(({ at, label }) => [
      path(line([x(at), BOTTOM], [x(at), BOTTOM + 5]), 'thin'),
      lettering(label, [x(at), BOTTOM + 20], { size: 12, paint: 'soft' }),
    ]),
  ]
}

/** A line at each repack, and over it what was put in, where there is room for the words. */
function lives({ lives: all, from }: LeakCourse, { x, right }: Frame): Shape[] {
  return all.flatMap((life, place): Shape[] => {
    const at = life.from === null ? LEFT : Math.max(x(life.from), LEFT)
    const next = all[place + 1]?.from ?? null
    const room = (next === null ? right : x(next)) - at
    const name = life.family ?? (life.from === null ? 'before the records' : 'packing not known')
    const words = [name, String(place + 1)].find((each) => each.length * PX_PER_LETTER + 8 < room)
    return [
      ...(life.from !== null && life.from > from ? [path(line([at, TOP - 12], [at, BOTTOM]), 'centre')] : []),
      ...(words === undefined ? [] : [lettering(words, [at + 4, TOP - 16], { anchor: 'start', size: 12 })]),
    ]
  })
}

/** A follower moves only when somebody turns a nut: a stair, solid where read, dashed where worked out. */
function stair({ points, to }: LeakCourse, { x, y }: Frame): Shape[] {
  const ordered = points.toSorted((one, other) => Date.parse(one.at) - Date.parse(other.at))
  return ordered.flatMap(({ at, reserve, isInferred }, place) => {
    if (reserve === null) return []
    const before = ordered[place - 1]?.reserve ?? reserve
    const until = ordered[place + 1]?.at ?? to
    return [path(`M${px(x(at))} ${px(y(before))}V${px(y(reserve))}H${px(x(until))}`, 'out', isInferred)]
  })
}

/** As high as it was wide: half a turn is a whole tick. */
function nips({ nips: all }: LeakCourse, { x }: Frame): Shape[] {
  return all.map(({ at, turns }) =>
    path(line([x(at), ROW.nips], [x(at), ROW.nips - Math.max(-2, Math.min(2, turns * 2)) * HALF_TURN]), 'out'),
  )
}

/** A drop on a stem, the higher the worse; an open ring is damp, a square what only a meter showed. The bar: it stood open. */
function leaks({ sightings, open, to }: LeakCourse, { x }: Frame): Shape[] {
  const bars = open.map((spell) => {
    const [left, right] = endsOf(spell, { to }, { x })
    return path(rectangle([left, ROW.leaks], [right, ROW.leaks + 5]), 'hotfill')
  })
  const marks = sightings.flatMap(({ at, grade }): Shape[] => {
    const left = px(x(at))
    if (grade === null) return [path(square(left, ROW.leaks - 6), 'hotline')]
    if (grade === 'dry') return []
    if (grade === 'damp') return [path(`M${left - 3} ${ROW.leaks - 6}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0`, 'hotline')]
    const top = ROW.leaks - drops[grade]
    return [path(`M${left} ${ROW.leaks}V${top}`, 'hotline'), path(`M${left} ${top - 9}c-6 9 -4 13 0 13s6 -4 0 -13Z`, 'hotfill')]
  })
  return [...bars, ...marks]
}

type Spell = LeakCourse['open'][number]

function endsOf(spell: Spell, { to }: Pick<LeakCourse, 'to'>, { x }: Pick<Frame, 'x'>): readonly [left: number, right: number] {
  return [x(spell.from), Math.max(x(spell.to ?? to), x(spell.from) + 1.5)]
}

/** A ground behind all rows with an edge where it was first seen, and a pointer under the axis. */
function shownLeak({ open, shown, to }: LeakCourse, frame: Frame): Shape[] {
  const spell = open[shown ?? -1]
  if (!spell) return []
  const [left, right] = endsOf(spell, { to }, frame)
  return [
    path(rectangle([left, TOP], [Math.max(right, left + 6), BOTTOM]), 'paperfill'),
    path(line([left, TOP], [left, BOTTOM]), 'hothair'),
    path(`M${px(left)} ${BOTTOM}l-6 9h12Z`, 'hotfill'),
  ]
}

const square = (x: number, y: number) => `M${px(x - 3)} ${px(y - 3)}h6v6h-6Z`
const diamond = (x: number, y: number) => `M${px(x)} ${px(y - 5)}l4 5l-4 5l-4 -5Z`
const px = (value: number) => Math.round(value * 10) / 10

function inWords({ lives: all, nips: turned, sightings, open, findings }: LeakCourse): string {
  const seen = sightings.filter(({ grade }) => grade !== 'dry').length
  return `${all.length} packings, ${turned.length} nips, leaks seen ${seen} times, open ${open.length} times, ${findings.length} findings.`
}
