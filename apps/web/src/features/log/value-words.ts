import { Crew } from '@glandkeeper/contract/crews'
import { FamilyFigures } from '@glandkeeper/contract/packings'
import { innermost, quantities } from '@glandkeeper/contract/quantity'
import { settings } from '@glandkeeper/contract/settings'
import { StockItemInput } from '@glandkeeper/contract/stores'
import { ValveInput } from '@glandkeeper/contract/valves'
import { nameInWords } from '@glandkeeper/units/format'
import { z } from 'zod'
import { formatDay, formatMoment } from '../../platform/site-time.ts'

const NO_BREAK_SPACE = '\u00a0'
/** Units that say nothing beside a figure: its name has said it, or the site knows its own money. */
const isUnspoken = (unit: string) => unit === '' || unit === 'ratio' || unit === 'pH' || unit.startsWith('money')
const spelledOut = new Set(['day', 'week', 'turn'])

type Shape = Readonly<Record<string, z.core.$ZodType>>
type NamedUnit = readonly [field: string, unit: string]

const settingShape = Object.fromEntries(Object.entries(settings).map(([name, { value }]) => [name, value]))

/** What each figure of the register is measured in, by the name of its field. */
const unitOf: ReadonlyMap<string, string> = new Map(
  [ValveInput.shape, StockItemInput.shape, Crew.shape, FamilyFigures.shape, settingShape].flatMap((shape) => unitsIn(shape)),
)

function unitsIn(shape: Shape): NamedUnit[] {
  return Object.entries(shape).flatMap(([field, schema]): NamedUnit[] => {
    const inner = innermost(schema)
    if (inner instanceof z.ZodObject) return unitsIn(inner.shape)
    const unit = quantities.get(inner)?.unit ?? ''
    return isUnspoken(unit) ? [] : [[field, unit]]
  })
}

/** What stood in a field as a person reads it: figures with their units, days and moments in the time of the site. */
export function valueInWords(field: string, text: string, timeZone: string): string {
  if (text === '') return 'empty'
  if (/^[[{]/.test(text)) return partsInWords(parsed(text), timeZone) ?? text
  const unit = unitOf.get(field.split('.').at(-1) ?? '')
  if (unit !== undefined && /^-?\d+(\.\d+)?$/.test(text)) return withUnit(text, unit)
  return plainInWords(text, timeZone)
}

function withUnit(figure: string, unit: string): string {
  const minus = figure.replace('-', '−')
  if (unit === '°') return `${minus}°`
  return `${minus}${NO_BREAK_SPACE}${spelledOut.has(unit) && figure !== '1' ? `${unit}s` : unit}`
}

function plainInWords(text: string, timeZone: string): string {
  if (text === 'true') return 'yes'
  if (text === 'false') return 'no'
  if (z.iso.date().safeParse(text).success) return formatDay(text)
  if (z.iso.datetime().safeParse(text).success) return formatMoment(text, timeZone)
  return text
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown
  } catch {
    return undefined
  }
}

/** Lists and groups of figures, in the order they were kept; null where it was text that only looks like one. */
function partsInWords(value: unknown, timeZone: string): string | null {
  if (value === undefined) return null
  if (value === null) return 'empty'
  if (Array.isArray(value)) {
    const parts = value.map((part: unknown) => partsInWords(part, timeZone))
    return parts.length === 0 ? 'none' : parts.join(value.some((part) => typeof part === 'object') ? '; ' : ', ')
  }
  if (typeof value === 'object') {
    return Object.entries(value)
      .map(([name, part]) => `${nameInWords(name)} ${partsInWords(part, timeZone)}`)
      .join(', ')
  }
  return plainInWords(typeof value === 'string' ? value : JSON.stringify(value), timeZone)
}
