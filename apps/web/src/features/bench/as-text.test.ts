import { calculators } from '@glandkeeper/bench/calculators'
import { ringLength } from '@glandkeeper/bench/cut/ring-length'
import { expect, it } from 'vitest'
import { asText } from './as-text.ts'
import { answerParts } from './figures-in-words.ts'
import { startingTexts } from './starting-texts.ts'
import { readAndCompute } from './typed-inputs.ts'

it('an answer as text says what was given, what came of it, and where', () => {
  const { texts } = startingTexts(ringLength, null)
  const { answer } = readAndCompute(ringLength, texts)
  const lines = asText(ringLength, texts, answer ?? {}, 'https://plant.example/bench/ring-length').split('\n')
  expect(lines[0]).toBe('Ring length')
  expect(lines).toContain('  Stem diameter: 28 mm')
  expect(lines).toContain('  Each ring, along its edge: 114.7 mm (4.514 in)')
  expect(lines).toContain('  Wraps to wind on a bar of stem size: 6')
  expect(lines.at(-1)).toBe('https://plant.example/bench/ring-length')
})

it('every part of every answer has words and no gap in them', () => {
  for (const calculator of calculators) {
    const { answer } = readAndCompute(calculator, startingTexts(calculator, null).texts)
    const parts = answerParts(calculator.output, answer ?? {})
    expect(parts.length).toBeGreaterThan(0)
    expect(JSON.stringify(parts)).not.toMatch(/undefined|NaN|\[object/)
  }
})
