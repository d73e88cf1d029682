import { expect, test } from 'vitest'
import { tagInCode } from './tag-in-code.ts'

test.each([
  ['https://mill.example/v/BM-3307', 'BM-3307'],
  ['http://10.0.0.4:4170/v/BM%203307%2FA', 'BM 3307/A'],
  [' BM-3307 ', 'BM-3307'],
  ['https://mill.example/valves/BM-3307', null],
  ['https://mill.example/v/%E0%A4%A', null],
  ['https://mill.example/v/', null],
  ['WIFI:S:guest;T:WPA;P:secret;;', null],
  ['', null],
])('%j stands for %j', (text, tag) => {
  expect(tagInCode(text)).toBe(tag)
})
