import { expect, test } from 'vitest'
import { tagsIn } from './typed-tags.ts'

test('tags come one a line, with commas, semicolons or tabs; blanks belong to a tag, and twice is once', () => {
  expect(tagsIn('BM-3307\r\n BM-3308,BM-3309;; 21 HV 4\tBM-3307\n')).toEqual({
    tags: ['BM-3307', 'BM-3308', 'BM-3309', '21 HV 4'],
    fault: null,
  })
})

test('nothing, an odd tag and too many are said', () => {
  expect(tagsIn(' \n').fault).toBe('Is needed')
  expect(tagsIn('BM-1\n?BM-2').fault).toContain('?BM-2:')
  const many = (count: number) => tagsIn(Array.from({ length: count }, (_, n) => `BM-${n}`).join('\n')).fault
  expect(many(500)).toBeNull()
  expect(many(501)).toContain('500 at most')
})
