import { expect, test } from 'vitest'
import { valueInWords } from './value-words.ts'

const said = (field: string, text: string) => valueInWords(field, text, 'Europe/London').replaceAll('\u00a0', ' ')

test('figures have the units of their fields, wherever the field stands', () => {
  expect(said('boxBore', '42.5')).toBe('42.5 mm')
  expect(said('gland.boxBore', '42.5')).toBe('42.5 mm')
  expect(said('boxDepth', '50')).toBe('50 mm')
  expect(said('temperature', '-15')).toBe('−15 °C')
  expect(said('hoursPerWeek', '19')).toBe('19 h')
  expect(said('skiveAngle', '45')).toBe('45°')
  expect([said('mostBetweenOrdinary', '1'), said('mostBetweenOrdinary', '365')]).toEqual(['1 day', '365 days'])
  expect(said('section', '9.5')).toBe('9.5 mm')
})

test('counts, shares and words stay as they are', () => {
  expect(said('studCount', '2')).toBe('2')
  expect(said('cordWaste', '0.1')).toBe('0.1')
  expect(said('studThread', 'M12')).toBe('M12')
  expect(said('boxBore', 'about 40')).toBe('about 40')
})

test('days and moments are those of the site, and nothing is called empty', () => {
  expect(said('likelyOn', '2027-08-15')).toBe('15 Aug 2027')
  expect(said('retiredAt', '2026-05-04T06:30:00.000Z')).toBe('4 May 2026, 07:30')
  expect(said('description', '')).toBe('empty')
  expect(said('isolatesOnLine', 'false')).toBe('no')
  expect(said('isolatesOnLine', 'true')).toBe('yes')
})

test('lists and groups are read out part by part', () => {
  expect(said('areaCodes', '["BH","SM"]')).toBe('BH, SM')
  expect(said('areaCodes', '[]')).toBe('none')
  expect(said('hours', '{"fitting":180,"isolating":null}')).toBe('fitting 180, isolating empty')
  expect(said('stairs', '[{"east":0,"lowestLevel":1},{"east":58,"lowestLevel":2}]')).toBe(
    'east 0, lowest level 1; east 58, lowest level 2',
  )
})

test('text that only begins like a list is left alone', () => {
  expect(said('description', '[old] feed pump')).toBe('[old] feed pump')
  expect(said('description', '{')).toBe('{')
})
