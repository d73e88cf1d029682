import type { ValveHistory } from '@glandkeeper/contract/valves'
import { useMeasuredWidth } from './measured-width.ts'
import { Dimensioned, Labelled } from './section-figures.tsx'
import {
  type Outline,
  placementOf,
  proportionsOf,
  type Placement,
  type Room,
  type SectionShapes,
  shapesOf,
} from './section-geometry.ts'
import { dimensionsOf, labelsOf } from './section-labels.ts'
import { type DrawnGland, drawnGland, isToScale, scaleNote } from './section-model.ts'
import { sectionInWords } from './section-words.ts'
import look from './section-drawing.module.css'

const DESK_HEIGHT = 560
const PHONE_WIDTH = 480

/** The stuffing box of one valve, upright and in section, drawn from its own dimensions. */
export function SectionDrawing({ history }: { history: ValveHistory }) {
  const [frame, width] = useMeasuredWidth()
  const rings = history.lives.find((life) => life.to === null)?.rings ?? null
  const gland = drawnGland(history.valve.gland, history.state, rings)
  return (
    <figure ref={frame} className={look.figure}>
      {width !== null && width > 0 && <Section gland={gland} thread={history.valve.gland.studThread} width={width} />}
      <figcaption className={look.note}>{scaleNote(gland)}</figcaption>
    </figure>
  )
}

function Section({ gland, thread, width }: { gland: DrawnGland; thread: string | null; width: number }) {
  const isPhone = width < PHONE_WIDTH
  const room: Room = { width, mostHeight: isPhone ? 440 : DESK_HEIGHT, gutter: isPhone ? 102 : 114 }
  const place = placementOf(gland, room)
  const height = Math.max(place.height, 230)
  const shapes = shapesOf(gland, place)
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={sectionInWords(gland, thread)}>
      <Body gland={gland} place={place} shapes={shapes} />
      <KeepClear gland={gland} place={place} />
      <Studs gland={gland} place={place} shapes={shapes} />
      <Stem place={place} shapes={shapes} gland={gland} />
      {dimensionsOf(gland, place).map((dimension) => (
        <Dimensioned key={dimension.name} dimension={dimension} />
      ))}
      {labelsOf(gland, place, height, thread).map((label) => (
        <Labelled key={label.name} label={label} />
      ))}
    </svg>
  )
}

interface PartProps {
  gland: DrawnGland
  place: Placement
  shapes: SectionShapes
}

const pathOf = (outline: Outline) => `M${outline.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join('L')}Z`

function Shapes({ outlines, className }: { outlines: readonly Outline[]; className: string }) {
  return outlines.map((outline) => <path key={pathOf(outline)} d={pathOf(outline)} className={className} />)
}

function Body({ gland, shapes }: PartProps) {
  const isGuessed =
    gland.gapIsInferred || ['nose', 'gap left', 'gap right'].some((measure) => gland.assumed.has(measure as 'nose'))
  const follower = isGuessed ? ` ${look.guessed}` : ''
  const box = isToScale(gland) ? 'out' : `out ${look.guessed}`
  return (
    <>
      <Shapes outlines={shapes.medium} className="medium" />
      <Shapes outlines={shapes.walls} className={`steel ${box}`} />
      <Rings gland={gland} shapes={shapes} />
      <Shapes outlines={shapes.bush} className={`steel2 out${follower}`} />
      <Shapes outlines={shapes.bridge} className={`steel out${follower}`} />
    </>
  )
}

function Rings({ gland, shapes }: Pick<PartProps, 'gland' | 'shapes'>) {
  const areCounted = !gland.assumed.has('rings')
  return shapes.rings.map(({ left, right }, index) => {
    const [inner, outer, , top] = left
    if (!inner || !outer || !top) return null
    const tall = inner[1] - top[1]
    const fits = tall > 15 && inner[0] - outer[0] > 13
    const line = tall > 6 ? 'out' : 'thin'
    return (
      <g key={pathOf(left)}>
        <path d={pathOf(left)} className={`pack ${line}`} />
        <path d={pathOf(right)} className={`pack ${line}`} />
        {areCounted && fits && (
          <text x={(inner[0] + outer[0]) / 2} y={(inner[1] + top[1]) / 2 + 5} textAnchor="middle" className={look.ring}>
            {index + 1}
          </text>
        )}
      </g>
    )
  })
}

function KeepClear({ gland, place }: Pick<PartProps, 'gland' | 'place'>) {
  const half = proportionsOf(gland).flangeHalf
  const y = place.y(-gland.keepClear)
  const sides = [-1, 1].map((side) => `M${place.x(side * half) + side * 6} ${y}H${place.x((side * gland.bore) / 2)}`)
  return <path d={sides.join('')} className={`hotline ${look.least}`} />
}

function Studs({ gland, place, shapes }: PartProps) {
  const outside = gland.assumed.has('stud thread') ? `out ${look.guessed}` : 'out'
  return shapes.studs.map((stud, index) => {
    const [from, , to] = stud
    const nut = shapes.nuts[index]
    if (!from || !to || !nut) return null
    const axis = (from[0] + to[0]) / 2
    const root = (to[0] - from[0]) * 0.08
    const [nutFrom, , nutTo] = nut
    const facet = (gland.studDiameter * place.k) / 3
    return (
      <g key={axis}>
        <path d={pathOf(stud)} className={`paperfill ${outside}`} />
        <path d={`M${from[0] + root} ${from[1]}V${to[1]}M${to[0] - root} ${from[1]}V${to[1]}`} className="hair" />
        <path d={pathOf(nut)} className={`plain ${outside}`} />
        {nutFrom && nutTo && (
          <path d={`M${axis - facet} ${nutFrom[1]}V${nutTo[1]}M${axis + facet} ${nutFrom[1]}V${nutTo[1]}`} className="thin" />
        )}
        <path d={`M${axis} ${from[1] - 10}V${to[1] + 10}`} className="centre" />
      </g>
    )
  })
}

function Stem({ gland, place, shapes }: PartProps) {
  const { left, right, top, bottom } = shapes.stem
  const wide = right - left
  const bow = Math.min(wide / 8, 14)
  const broken = (y: number) => `M${left} ${y}q${wide / 4} ${bow} ${wide / 2} 0t${wide / 2} 0`
  const outline = gland.assumed.has('stem') ? `out ${look.guessed}` : 'out'
  return (
    <>
      <path d={`${broken(top)}V${bottom}q${-wide / 4} ${-bow} ${-wide / 2} 0t${-wide / 2} 0Z`} className="paperfill" />
      <path d={`M${left} ${top}V${bottom}M${right} ${top}V${bottom}`} className={outline} />
      <path d={`${broken(top)}${broken(bottom)}`} className="thin" />
      <path d={`M${place.x(0)} ${top - 10}V${bottom + 12}`} className="centre" />
    </>
  )
}
