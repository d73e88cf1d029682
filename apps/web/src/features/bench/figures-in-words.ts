import { innermost, quantities, type QuantityMeta } from '@glandkeeper/contract/quantity'
import { formatFigure, inInches } from '@glandkeeper/units/figure'
import { z } from 'zod'
import { inWords } from './fields.ts'

/** Decimals worth showing: as many as the step of the quantity has. */
export function placesOf({ step }: QuantityMeta): number {
  return step >= 1 ? 0 : Math.ceil(-Math.log10(step) - 1e-9)
}

/** One line of an answer: a figure with its counterpart in inches, a word, a sentence, or a table. */
export type AnswerPart =
  | {
      readonly kind: 'figure'
      readonly name: string
      readonly label: string
      readonly figure: string
      readonly inches: string | null
    }
  | { readonly kind: 'word'; readonly name: string; readonly label: string; readonly says: string }
  | { readonly kind: 'sentences'; readonly name: string; readonly label: string; readonly says: readonly string[] }
  | {
      readonly kind: 'table'
      readonly name: string
      readonly label: string
      readonly heads: readonly string[]
      readonly rows: readonly (readonly string[])[]
    }

/** An answer as parts to show, in the order of its schema. What was not computed (null) is left out. */
export function answerParts(schema: z.ZodObject, answer: Readonly<Record<string, unknown>>): AnswerPart[] {
  return Object.entries(schema.shape as Readonly<Record<string, z.core.$ZodType>>).flatMap(([name, field]): AnswerPart[] => {
    const value = answer[name]
    if (value === null || value === undefined) return []
    const inner = innermost(field)
    const meta = quantities.get(inner)
    const label = meta?.label ?? titleOf(inner) ?? inWords(name)
    if (meta && typeof value === 'number') {
      return [{ kind: 'figure', name, label, figure: figureOf(value, meta), inches: inInches(value, meta.unit) }]
    }
    if (!Array.isArray(value)) return [{ kind: 'word', name, label, says: saidOf(value, inner) }]
    if (value.length === 0) return []
    const element = inner instanceof z.ZodArray ? innermost(inner.element) : null
    if (element instanceof z.ZodObject) return [tableOf(name, label, element, value as Record<string, unknown>[])]
    const elementMeta = element ? quantities.get(element) : undefined
    const says = value.map((part) => (elementMeta && typeof part === 'number' ? figureOf(part, elementMeta) : String(part)))
    return [elementMeta ? { kind: 'word', name, label, says: says.join(' · ') } : { kind: 'sentences', name, label, says }]
  })
}

function tableOf(name: string, label: string, row: z.ZodObject, values: readonly Record<string, unknown>[]): AnswerPart {
  const shape: z.core.$ZodShape = row.shape
  const columns = Object.entries(shape)
  const metas = columns.map(([, field]) => quantities.get(innermost(field)))
  return {
    kind: 'table',
    name,
    label,
    heads: columns.map(([column, field], index) => headOf(metas[index], titleOf(innermost(field)) ?? inWords(column))),
    rows: values.map((value) =>
      columns.map(([column, field], index) => {
        const meta = metas[index]
        const cell = value[column]
        if (cell === null || cell === undefined) return ''
        return meta && typeof cell === 'number' ? formatFigure(cell, '', placesOf(meta)) : saidOf(cell, innermost(field))
      }),
    ),
  }
}

function headOf(meta: QuantityMeta | undefined, title: string): string {
  if (!meta) return title
  return meta.unit === '' || meta.unit === 'ratio' ? meta.label : `${meta.label}, ${meta.unit}`
}

function titleOf(schema: z.core.$ZodType): string | undefined {
  return schema instanceof z.ZodType ? schema.meta()?.title : undefined
}

function figureOf(value: number, meta: QuantityMeta): string {
  return formatFigure(value, meta.unit, placesOf(meta))
}

function saidOf(value: unknown, schema: z.core.$ZodType): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (schema instanceof z.ZodObject && typeof value === 'object' && value !== null) {
    return answerParts(schema, value as Record<string, unknown>)
      .map((part) => (part.kind === 'figure' ? `${part.label} ${part.figure}` : part.kind === 'word' ? part.says : ''))
      .filter((says) => says !== '')
      .join(', ')
  }
  return String(value)
}
