import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { Gland } from '@glandkeeper/contract/glands'
import { anotherRing } from '@glandkeeper/engines/gland/another-ring'
import { loadingVerdict } from '@glandkeeper/engines/gland/loading'
import { leastGapOf, reserveOf } from '@glandkeeper/engines/reserve/reserve'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import { type Millimetre, mm, ratio } from '@glandkeeper/units/quantity'
import { capital } from '../../ui/sentence.ts'

/** What the gaps say about the set that is in, with the figures behind it, and what to do. */
export interface GapVerdict {
  readonly verdict: 'good' | 'one more ring' | 'no room for another ring' | 'one ring too many' | 'tilted' | 'not known'
  readonly says: string
  /** In the imperative. */
  readonly nextStep: string
}

interface LoadedSet {
  readonly gland: Pick<Gland, 'noseLength' | 'leastEngagement' | 'keepClear'>
  /** Null where no card says what the gap should be. */
  readonly gap: CutCard['gap']
  readonly section: number | null
  /** Rings that are in beyond those the card counts with: its largest gap does not hold for them. */
  readonly ringsMore: number
}

interface Read {
  readonly gapLeft: number | null
  readonly gapRight: number | null
}

/**
 * The engine's word on a loaded set. A short gap asks for one more ring only where there is room for one: elsewhere the
 * packing is pressed harder than it should be, or the gland is another than the register says.
 *
 * @returns null until a gap is read
 */
export function gapVerdict({ gland, gap, section, ringsMore }: LoadedSet, read: Read): GapVerdict | null {
  const gapLeft = asMillimetres(read.gapLeft)
  const gapRight = asMillimetres(read.gapRight)
  const least = leastGapOf(gapLeft, gapRight)
  if (least === null) return null
  const left = reserveOf(gland, { leastGap: least, gapAtThreadEnd: null })?.reserve ?? null
  if (gap === null) return withoutCard(left)
  // The card has what is allowed in mm; the engine takes it as a share of a height.
  const allowed = gap.most - gap.expected
  const found = loadingVerdict({
    gapLeft,
    gapRight,
    expectedGap: gap.expected,
    setHeight: mm(2 * allowed),
    tolerance: ratio(0.5),
  })
  if (!found.ok) return withoutCard(left)
  const wide = mm(Math.max(gapLeft ?? least, gapRight ?? least))
  const room = section === null || gland.noseLength === null ? null : roomFor(gland, gland.noseLength, section, wide)
  const against = `gap ${millimetres(found.gap)}, expected ${millimetres(gap.expected)} (${gap.least.toFixed(1)} to ${gap.most.toFixed(1)} is right)`
  if (found.verdict === 'tilted') return tilted(found.tilt ?? 0, (gapLeft ?? 0) > (gapRight ?? 0) ? 'left' : 'right')
  const isGuided = ringsMore > 0 && room !== null && room.noseInBox >= gland.leastEngagement
  if (found.verdict === 'rings stand too high' && !isGuided) return tooHigh(against, room?.noseInBox ?? null)
  if (found.verdict === 'rings stand too high' || (found.verdict === 'good' && least >= gap.least))
    return { verdict: 'good', says: `${capital(against)}: ${millimetres(left ?? 0)} of travel.`, nextStep: 'Go on.' }
  return tooShort(against, room)
}

type Room = { readonly fits: boolean; readonly noseInBox: Millimetre; readonly entryOverAnother: Millimetre }

function roomFor(gland: LoadedSet['gland'], noseLength: Millimetre, section: number, gap: Millimetre): Room | null {
  const found = anotherRing({ noseLength, gap, section: mm(section), leastEngagement: gland.leastEngagement })
  return found.ok ? found : null
}

function tooShort(against: string, room: Room | null): GapVerdict {
  const short = `${capital(against)}: the packing sits low.`
  if (room === null || !room.fits)
    return {
      verdict: 'no room for another ring',
      says:
        room === null ? short : `${short} Over another ring the nose would enter by only ${millimetres(room.entryOverAnother)}.`,
      nextStep: 'Stop, do not press harder. Count the rings and ask the engineer before it goes back.',
    }
  return {
    verdict: 'one more ring',
    says: `${short} Over one more ring the nose would still enter by ${millimetres(room.entryOverAnother)}.`,
    nextStep: 'Put in one more ring, still isolated and proved at zero, and load the set again from the first step.',
  }
}

function tooHigh(against: string, noseInBox: Millimetre | null): GapVerdict {
  const nose = noseInBox === null ? '' : ` The nose is in by ${millimetres(noseInBox)}.`
  return {
    verdict: 'one ring too many',
    says: `${capital(against)}: the rings stand too high, not seated or one too many.${nose}`,
    nextStep:
      'Do not go above the last torque. Work the stem 3 to 5 strokes, load to it again and read again; if it stays, take one ring out, still isolated and proved at zero.',
  }
}

function tilted(tilt: number, high: 'left' | 'right'): GapVerdict {
  return {
    verdict: 'tilted',
    says: `The two gaps differ by ${millimetres(tilt)}, the ${high} side is high: of a follower that tilts the gap says little.`,
    nextStep: `Slacken, level it, take both nuts up by quarter turns alternately and equally, and read again.`,
  }
}

function withoutCard(reserve: Millimetre | null): GapVerdict {
  if (reserve !== null && reserve <= 0)
    return {
      verdict: 'not known',
      says: 'At this gap no travel is left to take up.',
      nextStep: 'Stop, and ask the engineer before it goes back.',
    }
  return {
    verdict: 'not known',
    says: `What the gap should be is not known: the gland is not measured.${reserve === null ? '' : ` ${millimetres(reserve)} of travel by this gap.`}`,
    nextStep: 'Count the rings, and have bore, depth and nose measured while it is open.',
  }
}

/** What is typed may be no figure for the length of a keystroke. */
function asMillimetres(gap: number | null): Millimetre | null {
  return gap === null || !Number.isFinite(gap) ? null : mm(gap)
}
