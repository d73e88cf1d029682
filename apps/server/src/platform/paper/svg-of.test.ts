import { type Drawing, lettering, type Paint, path } from '@glandkeeper/drawings/drawing'
import { describe, expect, it } from 'vitest'
import { pdfOf, printed } from './pdf.ts'
import { svgOf } from './svg-of.ts'

const drawingOf = (...shapes: Drawing['shapes']): Drawing => ({ width: 100, height: 50, says: 'a trial', shapes })

describe('a drawing as SVG text', () => {
  it('keeps coordinates and writes each paint out, without classes or colours by name', () => {
    const svg = svgOf(drawingOf(path('M1 2L3 4', 'pack out'), path('M5 6L7 8', 'hotline', true)))
    expect(svg).toContain('<path d="M1 2L3 4" fill="url(#h-pack)" stroke="#1E2328" stroke-width="1.6" stroke-linejoin="round"/>')
    expect(svg).toContain('d="M5 6L7 8" fill="none" stroke="#A8321A" stroke-width="1.6" stroke-dasharray="6 3"/>')
    expect(svg).not.toMatch(/class=|var\(/)
  })

  it('defines every pattern and arrow it uses', () => {
    const paints: Paint[] = ['steel out', 'steel2 out', 'pack out', 'pack thin', 'medium', 'dim', 'dim end']
    const svg = svgOf(drawingOf(...paints.map((paint) => path('M0 0L9 9', paint))))
    const used = [...svg.matchAll(/url\(#([\w-]+)\)/g)].map((found) => found[1])
    expect(new Set(used).size).toBe(6)
    for (const id of used) expect(svg).toContain(`id="${id}"`)
  })

  it('an arrow at the start and one at the end point away from each other', () => {
    const svg = svgOf(drawingOf())
    // The reader knows no `auto-start-reverse`: it would draw both tips to the right.
    expect(svg).not.toContain('auto-start-reverse')
    expect(svg).toMatch(/id="arrow-start"[^>]*refX="0"/)
    expect(svg).toMatch(/id="arrow-end"[^>]*refX="10"/)
  })

  it('takes words for words', () => {
    const svg = svgOf(drawingOf(lettering('<b> & "\u0001', [1, 2])))
    expect(svg).toContain('>&lt;b&gt; &amp; &quot;</text>')
  })

  it('breaks a figure out of hatching, and puts dashes under a worked out one', () => {
    const svg = svgOf(
      drawingOf(lettering('5', [1, 2], { on: 'pack' }), lettering('7.0', [20, 10], { anchor: 'end', isDashed: true })),
    )
    expect(svg.indexOf('stroke="#EAD8AC"')).toBeLessThan(svg.lastIndexOf('>5</text>'))
    expect(svg).toMatch(/H20" fill="none" stroke="#1E2328" stroke-width="1" stroke-dasharray="4 3"/)
  })
})

it('no sheet opens a file or an address that its text names', async () => {
  const sheet = (content: object) => pdfOf({ size: 'A5', title: 'trial', footer: '', content: [content as never] })
  await expect(sheet({ image: '/etc/hostname' })).rejects.toThrow(/denied by resource access policy/)
  await expect(sheet(printed(drawingOf()) as object)).resolves.toBeInstanceOf(Uint8Array)
})
