import { Gland } from '@glandkeeper/contract/glands'
import { faultsOf, type Fault } from '@glandkeeper/contract/problem'
import { unusualQuantities, type Unusual } from '@glandkeeper/contract/quantity'
import { ValveInput } from '@glandkeeper/contract/valves'
import { valveFields, type ValveField } from './valve-fields.ts'

/** The form as it is typed: text and switches by pointer. Figures stay text until they are saved. */
export type ValveDraft = Readonly<Record<string, string | boolean>>
export type FieldFaults = Readonly<Record<string, string>>

export const NOT_KNOWN = 'not known'

/** What a new valve starts from, by hand as by import: the cautious answer, or not known. */
export const newDraft: ValveDraft = {
  ...Object.fromEntries([...valveFields.values()].map((field) => [field.pointer, emptyFor(field)])),
  '/walkPosition': '0',
  '/level': '0',
  '/access': 'floor',
  '/criticality': 'ordinary',
  '/gland/leastEngagement': '3.2',
  '/gland/keepClear': '3',
  '/gland/studGrade': 'unknown',
  '/gland/lubrication': 'unknown',
}

function emptyFor({ input, mayBeUnknown }: ValveField): string | boolean {
  if (input.kind === 'yes or no') return false
  return input.kind === 'word' && mayBeUnknown ? NOT_KNOWN : ''
}

export function draftOf(valve: ValveInput): ValveDraft {
  return Object.fromEntries(
    [...valveFields.values()].map((field) => {
      const value = valueAt(valve, field.pointer)
      return [field.pointer, typeof value === 'boolean' ? value : value === null ? emptyFor(field) : String(value)]
    }),
  )
}

type Leaf = string | number | boolean | null

function valueAt(valve: ValveInput, pointer: string): Leaf {
  const path = pointer.split('/').slice(1)
  return path.reduce<unknown>((part, name) => (part as Record<string, unknown>)[name], valve) as Leaf
}

/** The draft as the contract reads it, or every fault by field. */
export function checkDraft(draft: ValveDraft): { valve: ValveInput; faults?: never } | { valve?: never; faults: FieldFaults } {
  const parsed = ValveInput.safeParse(candidateOf(draft))
  return parsed.success
    ? { valve: parsed.data }
    : { faults: faultsByField(faultsOf(parsed.error).map(inFormWords(draft))).byField }
}

function candidateOf(draft: ValveDraft): Record<string, unknown> {
  const valve: Record<string, unknown> = { gland: {} }
  for (const field of valveFields.values()) {
    const [name = '', inner] = field.pointer.split('/').slice(1)
    if (inner === undefined) valve[name] = readField(field, draft[field.pointer])
    else (valve[name] as Record<string, unknown>)[inner] = readField(field, draft[field.pointer])
  }
  return valve
}

function readField({ input, mayBeUnknown }: ValveField, typed: string | boolean | undefined): unknown {
  if (typeof typed !== 'string') return typed
  const text = typed.trim()
  if (mayBeUnknown && (text === '' || text === NOT_KNOWN)) return null
  return input.kind === 'figure' ? readFigure(text) : text
}

/** A decimal comma is a decimal point. What is no figure stays text, for the contract to refuse. */
function readFigure(text: string): number | string {
  const figure = Number(text.replace(',', '.').replace('−', '-'))
  return text === '' || Number.isNaN(figure) ? text : figure
}

function inFormWords(draft: ValveDraft) {
  return ({ pointer, detail }: Fault): Fault => {
    const field = valveFields.get(fieldPointer(pointer))
    if (!field || draft[field.pointer] !== '') return { pointer, detail }
    return { pointer, detail: field.input.kind === 'word' || field.pointer === '/areaCode' ? 'Choose one' : 'Is needed' }
  }
}

/** `#/valve/gland/boxBore`, as a change names it, and `#/gland/boxBore` are the same field of the form. */
function fieldPointer(pointer: string): string {
  return pointer.replace(/^#/, '').replace(/^\/valve(?=\/)/, '')
}

/** Faults beside the fields they are about; what belongs to no field is kept for the note above the button. */
export function faultsByField(faults: readonly Fault[]): { byField: FieldFaults; others: Fault[] } {
  const byField: Record<string, string> = {}
  const others: Fault[] = []
  for (const fault of faults) {
    const pointer = fieldPointer(fault.pointer)
    const said = byField[pointer]
    if (!valveFields.has(pointer)) others.push(fault)
    else if (said === undefined) byField[pointer] = fault.detail
    else if (said !== fault.detail) byField[pointer] = `${said}; ${fault.detail}`
  }
  return { byField, others }
}

/** Possible figures that are seldom right: asked about once more before they are saved. */
export function unusualIn(valve: ValveInput): Unusual[] {
  return [...unusualQuantities(ValveInput, valve), ...unusualQuantities(Gland, valve.gland)]
}

/** @example 'Box bore 300 mm is unusual: 10 to 150 is usual.' */
export function unusualInWords({ value, meta }: Unusual): string {
  const figure = meta.unit === '' ? value : `${value}\u00a0${meta.unit}`
  return `${meta.label} ${figure} is unusual: ${meta.usual?.[0]} to ${meta.usual?.[1]} is usual.`
}

/** After somebody else saved first: their valve, with what was changed here put on top. */
export function rebase(start: ValveDraft, mine: ValveDraft, theirs: ValveDraft): { draft: ValveDraft; changedThere: string[] } {
  const mineOnly = Object.entries(mine).filter(([pointer, value]) => value !== start[pointer])
  return {
    draft: { ...theirs, ...Object.fromEntries(mineOnly) },
    changedThere: Object.keys(theirs).filter((pointer) => theirs[pointer] !== start[pointer]),
  }
}
