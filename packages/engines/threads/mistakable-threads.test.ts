import { describe, expect, it } from 'vitest'
import { mistakableThreads } from './mistakable-threads.ts'
import { studThreads } from './stud-threads.ts'

const others = (designation: string) => {
  const found = mistakableThreads(designation)
  return found.ok ? found.threads.map((other) => `${other.designation} ${other.likeness}`) : null
}

describe('threads taken for one another', () => {
  it('are BSW and UNC of one size and pitch, 55° against 60°', () => {
    expect(others('5/8-11 UNC')).toEqual(['5/8-11 BSW runs on'])
    expect(others('5/8-11 BSW')).toEqual(['5/8-11 UNC runs on'])
    expect(mistakableThreads('3/4-10 UNC')).toMatchObject({
      threads: [{ caution: expect.stringContaining('flanks 60° against 55°') as string }],
    })
  })

  it('of half an inch start and then bind: 12 threads against 13', () => {
    expect(others('1/2-13 UNC')).toEqual(['1/2-12 BSW starts and binds'])
    expect(others('1/2-12 BSW')).toEqual(['1/2-13 UNC starts and binds'])
  })

  it('are M8x1 and 5/16 UNF too: 0.06 mm apart in diameter, 1 against 1.058 mm in pitch', () => {
    expect(others('M8x1')).toEqual(['5/16-24 UNF starts and binds'])
  })

  it('are none where no thread is near', () => {
    expect(others('M16')).toEqual([])
    expect(others('1/2-20 UNF')).toEqual([])
  })

  it('name each other, on every thread, and never themselves', () => {
    for (const { designation } of studThreads) {
      const found = mistakableThreads(designation)
      expect(found.ok).toBe(true)
      if (found.ok)
        for (const other of found.threads) {
          expect(other.designation).not.toBe(designation)
          expect(others(other.designation)).toContain(`${designation} ${other.likeness}`)
          expect(other.caution).toContain('Gauge it')
        }
    }
  })

  it('of an unknown thread are refused', () => {
    expect(mistakableThreads('M7')).toMatchObject({ ok: false, problem: { code: 'thread/unknown' } })
  })
})
