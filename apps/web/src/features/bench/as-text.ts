import type { Calculator } from '@glandkeeper/bench/calculator'
import { answerParts } from './figures-in-words.ts'
import { fieldsOf, labelOf } from './fields.ts'
import type { Texts } from './typed-inputs.ts'

/** Inputs and answer as plain lines, as they would be read out over the telephone. */
export function asText(calculator: Calculator, texts: Texts, answer: Readonly<Record<string, unknown>>, address: string): string {
  const given = fieldsOf(calculator.input).flatMap((field) => {
    const text = texts[field.name] ?? ''
    if (text === '') return []
    const unit =
      (field.kind === 'figure' || field.kind === 'figures') && /^[-\d.;\s]+$/.test(text) ? unitAfter(field.meta.unit) : ''
    return [`  ${labelOf(field)}: ${text}${unit}`]
  })
  const found = answerParts(calculator.output, answer).flatMap((part) => {
    switch (part.kind) {
      case 'figure':
        return [`  ${part.label}: ${part.figure}${part.inches === null ? '' : ` (${part.inches})`}`]
      case 'word':
        return [`  ${part.label}: ${part.says}`]
      case 'sentences':
        return [`  ${part.label}:`, ...part.says.map((says) => `    ${says}`)]
      case 'table':
        return [`  ${part.label}:`, `    ${part.heads.join(' | ')}`, ...part.rows.map((row) => `    ${row.join(' | ')}`)]
    }
  })
  return [calculator.title, 'Given', ...given, 'Answer', ...found, address].join('\n').replaceAll('\u00a0', ' ')
}

function unitAfter(unit: string): string {
  return unit === '' || unit === 'ratio' ? '' : ` ${unit}`
}
