import { FieldEvent } from '@glandkeeper/contract/events'
import { beforeAll, expect, test } from 'vitest'
import { type Circumstances, correctionOf, entriesOf, takenBackAtOnce, unusualFigures } from './commands.ts'
import { type Draft, emptyDraft, factsOf, missingIn, noteOf } from './draft.ts'

beforeAll(() => {
  const kept = new Map<string, string>()
  Object.assign(globalThis, {
    localStorage: {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    },
  })
})

const here: Circumstances = {
  valveId: '01890000-0000-7000-8000-000000000003',
  at: new Date('2026-05-04T10:00:00Z'),
  takenBy: '',
  note: '',
}
const entries = (change: Partial<Draft> = {}, circumstances = here) => {
  const built = entriesOf(circumstances, factsOf({ ...emptyDraft, ...change }))
  if (!built.ok) throw new Error(built.faults.join(' '))
  return built.entries
}

test('an untouched page is half a turn on both nuts, dry after, and nothing nobody said', () => {
  const [entry, ...more] = entries()
  expect(more).toEqual([])
  expect(entry).toMatchObject({ kind: 'gland.nipped', turnsLeft: 0.5, turnsRight: 0.5, leakAfter: 'dry' })
  expect(JSON.parse(JSON.stringify(entry))).not.toHaveProperty('stem')
})

test('every kind of entry passes the contract after a journey over the wire', () => {
  const drafts: Partial<Draft>[] = [
    {},
    { turns: 'none', gapLeft: 6.5, gapRight: 5.7, stem: 'stiff' },
    { turns: 'none' },
    { turns: 'other', otherTurns: { left: 0.5, right: 0.25 }, gapLeft: 6 },
    { turns: 'other', otherTurns: { left: 1 / 6, right: 1 / 3 }, leakBefore: 'drip' },
    { leakBefore: 'drip', dropsPerMinute: 12, screeningValue: 800, gapLeft: 7.9375 },
    { kind: 'leak seen', leak: 'drip', dropsPerMinute: 12 },
    { kind: 'leak seen', leak: 'dry', screeningValue: 120 },
    { kind: 'leak seen', leak: 'run', plume: 0.4, opening: 2, duty: 'in service', stemPosition: 'partly open' },
    { kind: 'leak seen', screeningValue: 9, background: 2, isPegged: true, instrument: 'Meter 2', calibratedOn: '2026-05-03' },
    { kind: 'something else done about a leak', treatment: 'stem cleaned', leakAfter: 'damp' },
    { kind: 'put the repair off', deferReason: 'needs a shutdown', approvedBy: 'P. Lindqvist', until: '2026-06-01' },
    { kind: 'could not do it', missed: 'too hot' },
    { kind: 'repacked', family: 'graphite braid', cut: 'skive', rings: 5, section: 8.5, gapLeft: 12, gapRight: 12, proved: true },
    { kind: 'ring added', ringsAdded: 1, gapLeft: 9 },
  ]
  for (const draft of drafts)
    for (const entry of entries(draft)) expect(FieldEvent.safeParse(JSON.parse(JSON.stringify(entry))).error).toBeUndefined()
})

test('a gap set beside turns is a reading of its own, after the nip', () => {
  const [nip, reading] = entries({ gapLeft: 6.5, gapRight: 5.7, leak: 'weep' })
  expect([nip?.kind, reading?.kind]).toEqual(['gland.nipped', 'reading.taken'])
  expect((nip?.id ?? '') < (reading?.id ?? '')).toBe(true)
  expect(reading).not.toHaveProperty('leak', 'weep')
})

test('a look without a figure is a leak sighting, and the stem goes into its note', () => {
  const look: Draft = { ...emptyDraft, turns: 'none', leak: 'damp', stem: 'stiff', note: 'noisy' }
  expect(factsOf(look)).toEqual([{ kind: 'leak.seen', leak: 'damp' }])
  expect(noteOf(look)).toBe('Stem stiff. noisy')
})

test('pictures belong to the first entry of a visit only', () => {
  const photos = ['ab'.repeat(32)]
  const [nip, reading] = entries({ gapLeft: 6.5, gapRight: 5.7 }, { ...here, photos })
  expect(nip).toMatchObject({ photos })
  expect(reading).not.toHaveProperty('photos')
})

test('a gap of 0 is a gap that was read', () => {
  expect(factsOf({ ...emptyDraft, turns: 'none', gapLeft: 0 })[0]).toMatchObject({ kind: 'reading.taken', gapLeft: 0 })
})

test('an impossible figure is refused with its reason', () => {
  expect(entriesOf(here, factsOf({ ...emptyDraft, turns: 'none', gapLeft: 250 }))).toEqual({
    ok: false,
    faults: ['Gap: at most 200 mm'],
  })
})

test('the time keeps the offset of the device', () => {
  expect(entries()[0]?.takenAt).toMatch(/(Z|[+-]\d\d:\d\d)$/)
  expect(Date.parse(entries()[0]?.takenAt ?? '')).toBe(here.at.getTime())
})

test('taking back is an entry of its own that names the first and puts nothing in its place', () => {
  const [entry] = entries()
  if (!entry) throw new Error('no entry')
  const back = takenBackAtOnce(entry, here.at)
  expect(back).toMatchObject({
    kind: 'fact.corrected',
    corrects: entry.id,
    reason: 'taken back at once',
    replacement: null,
    valveId: here.valveId,
  })
  expect(back.id).not.toBe(entry.id)
})

test('figures outside their usual range are asked about, usual ones are not', () => {
  expect(
    entries({ turns: 'other', otherTurns: { left: 3, right: 3 } })
      .flatMap(unusualFigures)
      .map(({ field }) => field),
  ).toEqual(['turnsLeft', 'turnsRight'])
  expect(entries().flatMap(unusualFigures)).toEqual([])
})

test('a missed visit needs its reason', () => {
  expect(missingIn({ ...emptyDraft, kind: 'could not do it' })).toContain('why')
  expect(missingIn({ ...emptyDraft, kind: 'could not do it', missed: 'no access' })).toBeNull()
})

test('an entry put right keeps its kind, time and note, and none of what made it that entry', () => {
  const [entry] = entries({ note: 'noisy' }, { ...here, note: 'noisy', photos: ['ab'.repeat(32)] })
  if (entry?.kind !== 'gland.nipped') throw new Error('no nip')
  const one = entries({ turns: 'one' })[0]
  if (one?.kind !== 'gland.nipped') throw new Error('no nip')
  const right = correctionOf(entry, { reason: 'it was one turn', replacement: { ...entry, turnsLeft: one.turnsLeft } }, here.at)
  expect(right).toMatchObject({
    kind: 'fact.corrected',
    corrects: entry.id,
    reason: 'it was one turn',
    replacement: { kind: 'gland.nipped', turnsLeft: 1, turnsRight: 0.5, takenAt: entry.takenAt, note: 'noisy' },
  })
  expect(right.kind === 'fact.corrected' && Object.keys(right.replacement ?? {})).not.toContain('photos')
})
