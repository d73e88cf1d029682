import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')

const rowsOf = (file: string) =>
  readFileSync(path.join(root, file), 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('| ') && !line.startsWith('| word'))
    .map((line) => line.split('|').map((cell) => cell.trim()))

describe('every word of docs/words.md', () => {
  const rows = rowsOf('docs/words.md').map(([, word, meaning, , home, name]) => ({ word, meaning, home: home!, name: name! }))

  it('is there', () => expect(rows.length).toBeGreaterThan(30))

  it.each(rows)('$word lives in $home as $name', ({ meaning, home, name }) => {
    expect(meaning).not.toBe('')
    expect(readFileSync(path.join(root, home), 'utf8')).toMatch(
      new RegExp(String.raw`(?<![\w-])${name.replace('.', String.raw`\.`)}(?![\w-])`),
    )
  })

  it('stands once', () => {
    const words = rows.map((row) => row.word)
    expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual([])
  })
})
