import type { ComparedPacking } from '@glandkeeper/contract/packing-lives'
import { scaleLinear } from '@visx/scale'
import { letterOf } from './lives-words.ts'

export interface Stair {
  readonly family: string
  readonly letter: string
  readonly path: string
  /** Between the limits; empty where none are known. */
  readonly band: string
  readonly dash: string
  readonly isTooFew: boolean
  readonly endX: number
  /** Where the line ends, and where its label stands, clear of the others. */
  readonly endY: number
  readonly labelY: number
  readonly rowY: number
  readonly atRisk: readonly { readonly x: number; readonly lives: number }[]
}

export interface StairsFrame {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly base: number
  readonly height: number
  readonly hasNames: boolean
  readonly stairs: readonly Stair[]
  readonly levels: readonly { readonly y: number; readonly label: string }[]
  readonly times: readonly { readonly x: number; readonly label: string }[]
}

const LEFT = 46
const TOP = 14
const NAMES = 190
const LETTERS = 30
/** Narrower than this, letters stand for the names. */
const NAMES_FROM_PX = 700
const AXIS = 48
const ROW = 20
const LABEL_APART = 16
const ONE_TIME_PX = 44
const dashes = ['', '10 5', '2 3', '12 3 2 3', '6 2', '12 3 2 3 2 3', '18 5', '1 5']

const rounded = (value: number) => Math.round(value * 10) / 10

/** The share of packings still going over the months, a stair for each family; below the axis how many were watched so long. */
export function stairsFrame(packings: readonly ComparedPacking[], width: number): StairsFrame {
  const hasNames = width >= NAMES_FROM_PX
  const right = Math.max(width - (hasNames ? NAMES : LETTERS), LEFT + 1)
  const base = TOP + (hasNames ? 280 : 220)
  const longest = Math.max(1, ...packings.flatMap(({ steps, atRisk }) => [steps.at(-1)?.months ?? 0, lastWatched(atRisk)]))
  const x = scaleLinear<number>({ domain: [0, longest], range: [LEFT, right] })
  const y = scaleLinear<number>({ domain: [0, 1], range: [base, TOP] })
  const stairs = packings.map((packing, index): Stair => {
    const end = packing.steps.at(-1)
    return {
      family: packing.family,
      letter: letterOf(index),
      path: pathOf(packing.steps, x, y),
      band: bandOf(packing.steps, x, y),
      dash: dashes[index % dashes.length] ?? '',
      isTooFew: packing.isTooFew,
      endX: rounded(x(end?.months ?? 0)),
      endY: rounded(y(end?.survival ?? 1)),
      labelY: rounded(y(end?.survival ?? 1)),
      rowY: base + AXIS + index * ROW,
      atRisk: apart(packing.atRisk.map(({ months, lives }) => ({ x: rounded(x(months)), lives }))),
    }
  })
  const [first] = packings
  const times = first
    ? first.atRisk.map(({ months }) => ({ x: rounded(x(months)), label: String(Number(months.toFixed(1))) }))
    : []
  return {
    left: LEFT,
    right,
    top: TOP,
    base,
    height: base + AXIS + Math.max(packings.length, 1) * ROW,
    hasNames,
    stairs: clearOfEachOther(stairs, base),
    levels: [0, 0.25, 0.5, 0.75, 1].map((share) => ({ y: y(share), label: `${share * 100}` })),
    times: apart(times.filter((time) => time.x <= right + 1)),
  }
}

function lastWatched(atRisk: ComparedPacking['atRisk']): number {
  return atRisk.findLast(({ lives }) => lives > 0)?.months ?? 0
}

type Scale = (value: number) => number

/** All are going at the beginning; where one is worn out the stair goes down. */
function pathOf(steps: ComparedPacking['steps'], x: Scale, y: Scale): string {
  return steps.reduce(
    (path, { months, survival }) => `${path}H${rounded(x(months))}V${rounded(y(survival))}`,
    `M${rounded(x(0))} ${rounded(y(1))}`,
  )
}

function bandOf(steps: ComparedPacking['steps'], x: Scale, y: Scale): string {
  const known = steps.flatMap(({ months, lower, upper }) =>
    lower === null || upper === null ? [] : [{ x: rounded(x(months)), lower: rounded(y(lower)), upper: rounded(y(upper)) }],
  )
  const [first] = known
  if (!first || known.length < 2) return ''
  const forth = known.slice(1).reduce((path, step) => `${path}H${step.x}V${step.upper}`, `M${first.x} ${first.upper}`)
  return `${forth}${known.toReversed().reduce((path, step) => `${path}V${step.lower}H${step.x}`, '')}Z`
}

/** Those that have room for their figure, from the first on. */
function apart<Place extends { readonly x: number }>(places: readonly Place[]): Place[] {
  let last = Number.NEGATIVE_INFINITY
  return places.filter(({ x }) => {
    if (x - last < ONE_TIME_PX) return false
    last = x
    return true
  })
}

/** Labels keep their order and stand a line apart, pushed up from the axis where they would pass it. */
function clearOfEachOther(stairs: readonly Stair[], base: number): Stair[] {
  const order = stairs.map((_, index) => index).toSorted((one, other) => (stairs[one]?.endY ?? 0) - (stairs[other]?.endY ?? 0))
  const places = new Map<number, number>()
  let least = TOP
  for (const index of order) {
    const place = Math.max(stairs[index]?.endY ?? 0, least)
    places.set(index, place)
    least = place + LABEL_APART
  }
  let most = base
  for (const index of order.toReversed()) {
    const place = Math.min(places.get(index) ?? 0, most)
    places.set(index, place)
    most = place - LABEL_APART
  }
  return stairs.map((stair, index) => ({ ...stair, labelY: rounded(places.get(index) ?? stair.labelY) }))
}
