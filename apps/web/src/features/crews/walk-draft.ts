import { type AreaWalk, type changeAreaWalk, WalkPlan } from '@glandkeeper/contract/crews'
import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { innermost, quantities, type QuantityMeta } from '@glandkeeper/contract/quantity'
import { figureOf } from '../readings/index.ts'

const placeShape = WalkPlan.shape.wayIn.unwrap().shape
const stairsShape = WalkPlan.shape.stairs.element.shape

export type PlaceField = keyof typeof placeShape
export type StairsField = keyof typeof stairsShape
export const placeFields = Object.keys(placeShape) as PlaceField[]
export const stairsFields = Object.keys(stairsShape) as StairsField[]

type PlaceTexts = Readonly<Record<PlaceField, string>>
export type StairsTexts = Readonly<Record<StairsField, string>> & {
  /** Keeps a row what it is while others are taken away. */
  readonly row: number
}

/** How an area is walked, as typed. */
export interface WalkDraft {
  readonly setUpMinutes: string
  readonly skill: string
  readonly crewId: string | null
  readonly wayIn: PlaceTexts
  readonly stairs: readonly StairsTexts[]
}

export function walkDraftOf({ setUpMinutes, skill, crewId, walkPlan }: AreaWalk): WalkDraft {
  return {
    setUpMinutes: String(setUpMinutes ?? ''),
    skill: skill ?? '',
    crewId,
    wayIn: textsOf(placeFields, walkPlan?.wayIn),
    stairs: (walkPlan?.stairs ?? []).map((stairs, row) => ({ row, ...textsOf(stairsFields, stairs) })),
  }
}

/** With a row more, empty, at the end. */
export function withMoreStairs(stairs: readonly StairsTexts[]): StairsTexts[] {
  return [...stairs, { row: Math.max(-1, ...stairs.map(({ row }) => row)) + 1, ...textsOf(stairsFields, null) }]
}

/** What is sent. A way in is said whole or not at all: one figure of it asks for the others. */
export function walkOfDraft({ setUpMinutes, skill, crewId, wayIn, stairs }: WalkDraft): BodyIn<typeof changeAreaWalk> {
  const hasWayIn = placeFields.some((field) => wayIn[field].trim() !== '')
  const isMeasured = hasWayIn || stairs.length > 0
  return {
    setUpMinutes: figureOf(setUpMinutes),
    skill: skill.trim() === '' ? null : skill,
    crewId,
    walkPlan: isMeasured
      ? {
          wayIn: hasWayIn ? figuresOf(placeFields, wayIn) : null,
          stairs: stairs.map((texts) => figuresOf(stairsFields, texts)),
        }
      : null,
  }
}

/** The figure of the contract that a field of way in or stairs takes. */
export function quantityOfWalk(field: PlaceField | StairsField): QuantityMeta {
  const quantity = quantities.get(innermost({ ...placeShape, ...stairsShape }[field]))
  if (!quantity) throw new Error(`${field} is not in the registry of quantities`)
  return quantity
}

function textsOf<Field extends string>(
  fields: readonly Field[],
  figures: Readonly<Record<Field, number>> | null | undefined,
): Record<Field, string> {
  return Object.fromEntries(fields.map((field) => [field, String(figures?.[field] ?? '')])) as Record<Field, string>
}

function figuresOf<Field extends string>(
  fields: readonly Field[],
  texts: Readonly<Record<Field, string>>,
): Record<Field, number> {
  return Object.fromEntries(fields.map((field) => [field, figureOf(texts[field]) ?? Number.NaN])) as Record<Field, number>
}
