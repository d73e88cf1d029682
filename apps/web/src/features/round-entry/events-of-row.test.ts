import { LeakGrade, MissedReason, StemFeel } from '@glandkeeper/contract/events'
import { beforeAll, describe, expect, test } from 'vitest'
import { entriesOfRow, type OnPaper, readRow, type RowFault } from './events-of-row.ts'
import { type Cell, emptyRow, type RowTexts } from './row-texts.ts'

beforeAll(() => {
  const kept = new Map<string, string>()
  Object.assign(globalThis, {
    localStorage: {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    },
  })
})

const valveId = '01890000-0000-7000-8000-000000000003'
const paper: OnPaper = {
  day: '2026-05-04',
  timeZone: 'Europe/London',
  takenBy: 'R. Oakes',
  gapUnit: 'mm',
  now: new Date('2026-05-06T09:00:00Z'),
}
const row = (change: Partial<RowTexts>): RowTexts => ({ ...emptyRow, ...change })

const stamps = new Set(['id', 'version', 'device', 'valveId', 'takenBy', 'takenAt'])

/** What the row becomes, without the stamps that make it that entry. */
function entriesFrom(change: Partial<RowTexts>, paperChange: Partial<OnPaper> = {}) {
  const read = readRow(row(change), { ...paper, ...paperChange })
  if (read.is !== 'read') throw new Error(JSON.stringify(read))
  const built = entriesOfRow(read, valveId)
  if (!built.ok) throw new Error(JSON.stringify(built.faults))
  return built.entries.map((entry) => Object.fromEntries(Object.entries(entry).filter(([field]) => !stamps.has(field))))
}

function faultsOf(change: Partial<RowTexts>, paperChange: Partial<OnPaper> = {}): readonly RowFault[] {
  const read = readRow(row(change), { ...paper, ...paperChange })
  return read.is === 'faulty' ? read.faults : []
}

const turned = { turnsLeft: '1/2', turnsRight: '0.5' }
const gaps = { gapLeft: '7.4', gapRight: '7,2' }
const nip = { kind: 'gland.nipped', turnsLeft: 0.5, turnsRight: 0.5 }
const reading = { kind: 'reading.taken', gapLeft: 7.4, gapRight: 7.2 }

describe('a row becomes', () => {
  test.each<[string, Partial<RowTexts>, object[]]>([
    ['a reading, and no leak is made up', gaps, [reading]],
    ['a reading of one side', { gapRight: '7.2' }, [{ kind: 'reading.taken', gapRight: 7.2 }]],
    ['a reading with the leak before', { ...gaps, leakBefore: 'weep' }, [{ ...reading, leak: 'weep' }]],
    ['a reading with the leak after', { ...gaps, leakAfter: 'drip' }, [{ ...reading, leak: 'drip' }]],
    ['a reading with leak and stem', { ...gaps, leakAfter: 'dry', stem: 'firm' }, [{ ...reading, leak: 'dry', stem: 'firm' }]],
    ['a reading with a stem', { ...gaps, stem: 'stiff', note: 'noisy' }, [{ ...reading, stem: 'stiff', note: 'noisy' }]],
    ['a reading where no nut was turned', { ...gaps, turnsLeft: '0', turnsRight: '0' }, [reading]],
    ['a nip, and no leak is made up', turned, [nip]],
    ['a nip that says the leak before only', { ...turned, leakBefore: 'weep' }, [{ ...nip, leakBefore: 'weep' }]],
    ['a nip that says the leak after only', { ...turned, leakAfter: 'dry' }, [{ ...nip, leakAfter: 'dry' }]],
    [
      'a nip and a reading, the leak in one of them',
      { ...turned, ...gaps, leakBefore: 'drip', leakAfter: 'dry', stem: 'free' },
      [{ ...nip, leakBefore: 'drip', leakAfter: 'dry', stem: 'free' }, reading],
    ],
    [
      'a nip of one nut by flats, slackened on the other',
      { turnsLeft: '3f', turnsRight: '-1q' },
      [{ kind: 'gland.nipped', turnsLeft: 0.5, turnsRight: -0.25 }],
    ],
    ['a leak seen', { leakBefore: 'run' }, [{ kind: 'leak.seen', leak: 'run' }]],
    ['a look at which none was seen', { leakAfter: 'dry' }, [{ kind: 'leak.seen', leak: 'dry' }]],
    ['one leak, said twice', { leakBefore: 'weep', leakAfter: 'weep' }, [{ kind: 'leak.seen', leak: 'weep' }]],
    [
      'a leak seen, the stem with the words',
      { leakAfter: 'weep', stem: 'seized', note: 'lagging off' },
      [{ kind: 'leak.seen', leak: 'weep', note: 'Stem seized. lagging off' }],
    ],
    [
      'a missed visit',
      { missed: 'no access', note: 'scaffold' },
      [{ kind: 'visit.missed', reason: 'no access', note: 'scaffold' }],
    ],
  ])('%s', (_, change, entries) => expect(entriesFrom(change)).toEqual(entries.map((entry) => expect.objectContaining(entry))))

  test('nothing, where nothing stands in it', () => {
    expect(readRow(row({ note: '  ' }), paper)).toEqual({ is: 'empty' })
  })

  test('exactly what was said: no field is added to it', () => {
    expect(entriesFrom(gaps)).toEqual([reading])
    expect(entriesFrom(turned)).toEqual([nip])
    expect(entriesFrom({ ...turned, ...gaps, leakAfter: 'dry' })).toEqual([{ ...nip, leakAfter: 'dry' }, reading])
  })
})

/** Every way to fill a row or leave a cell empty: 2 · 2 · 3 · 3 · 2 · 2 · 2. */
const every = [false, true].flatMap((isTurned) =>
  [false, true].flatMap((isRead) =>
    ['', 'weep', 'dry'].flatMap((leakBefore) =>
      ['', 'weep', 'dry'].flatMap((leakAfter) =>
        ['', 'firm'].flatMap((stem) =>
          ['', 'too hot'].flatMap((missed) =>
            ['', 'a word'].map((note) =>
              row({ ...(isTurned && turned), ...(isRead && gaps), leakBefore, leakAfter, stem, missed, note }),
            ),
          ),
        ),
      ),
    ),
  ),
)

test('of every combination comes an entry that says what was typed, or a fault at a cell', () => {
  const counts = { entries: 0, faulty: 0, empty: 0 }
  for (const texts of every) {
    const read = readRow(texts, paper)
    if (read.is === 'empty') counts.empty += 1
    else if (read.is === 'faulty') {
      counts.faulty += 1
      expect(read.faults.every(({ cell, says }) => cell !== null && says.length > 10)).toBe(true)
    } else {
      counts.entries += 1
      const built = entriesOfRow(read, valveId)
      expect(built.ok).toBe(true)
      const said = JSON.stringify(built.ok && built.entries)
      for (const [cell, text] of Object.entries(texts) as [Cell, string][])
        if (LeakGrade.safeParse(text).success || StemFeel.safeParse(text).success || cell === 'note' || cell === 'missed')
          expect([texts, said.includes(text)]).toEqual([texts, true])
      for (const [cell, field] of [
        ['turnsLeft', 'turnsLeft'],
        ['gapLeft', 'gapLeft'],
        ['missed', 'reason'],
      ] as const)
        expect([texts, said.includes(`"${field}"`)]).toEqual([texts, texts[cell] !== ''])
      const leaks = [texts.leakBefore, texts.leakAfter].filter(Boolean)
      const asOften = texts.turnsLeft === '' ? new Set(leaks).size : leaks.length
      expect([texts, said.split(/"(?:weep|dry)"/).length - 1]).toEqual([texts, asOften])
    }
  }
  // Missed alone 2; turned 72; not turned: without leak 4, with one 6 · 8. Faulty: missed and more 142, two leaks 16, words alone 3.
  expect(counts).toEqual({ entries: 126, faulty: 161, empty: 1 })
})

describe('what cannot be understood is named at its cell', () => {
  test.each<[Partial<RowTexts>, Cell, string, boolean]>([
    [{ gapLeft: 'abc' }, 'gapLeft', 'Write a figure, such as 7.4.', false],
    [{ gapRight: '250' }, 'gapRight', 'Gap: at most 200 mm.', false],
    [{ gapLeft: '-1' }, 'gapLeft', 'Gap: at least 0 mm.', false],
    [{ turnsLeft: 'half', turnsRight: '1' }, 'turnsLeft', 'Write turns as 1/2, 0.5, 3f for flats or 2q for quarters.', false],
    [{ turnsLeft: '1', turnsRight: '90f' }, 'turnsRight', 'Turns: at most 10 turn.', false],
    [{ leakAfter: 'flood' }, 'leakAfter', 'There is no word flood here.', false],
    [{ leakAfter: 'dry', time: '25:00' }, 'time', 'Write a time as 7:40.', false],
    [{ turnsLeft: '1/2' }, 'turnsRight', 'Say the turns of both nuts: 0 for one that was not turned.', true],
    [{ turnsRight: '1/2' }, 'turnsLeft', 'Say the turns of both nuts: 0 for one that was not turned.', true],
    [{ leakBefore: 'weep', leakAfter: 'dry' }, 'leakAfter', 'Nothing was turned, so there is one leak', true],
    [{ stem: 'firm' }, 'stem', 'How the stem moves goes with a leak, a gap or turns', true],
    [{ note: 'noisy' }, 'note', 'A note goes with a leak, a gap, turns', true],
    [{ time: '7:40' }, 'note', 'A note goes with a leak, a gap, turns', true],
    [{ missed: 'too hot', gapLeft: '7' }, 'missed', 'Either it was done or it was not', true],
  ])('%j: %s', (change, cell, says, isMissing) => {
    expect(faultsOf(change)).toEqual([{ cell, says: expect.stringContaining(says), isMissing }])
  })

  test('all of them at once', () => {
    expect(faultsOf({ gapLeft: 'x', turnsLeft: 'y', time: 'z' }).map(({ cell }) => cell)).toEqual([
      'turnsLeft',
      'gapLeft',
      'time',
    ])
  })

  test("a note that is too long is the contract's to refuse", () => {
    const read = readRow(row({ ...gaps, note: 'n'.repeat(501) }), paper)
    if (read.is !== 'read') throw new Error('not read')
    expect(entriesOfRow(read, valveId)).toMatchObject({
      ok: false,
      faults: [{ cell: 'note', says: 'Note: at most 500 letters.' }],
    })
  })

  test.each([
    ['', 'Give the day'],
    ['2026-02-30', 'Give the day'],
    ['1949-12-31', 'Give the day'],
    ['2026-05-07', 'has not come yet'],
  ])('the day "%s"', (day, says) => {
    expect(faultsOf(gaps, { day })).toMatchObject([{ cell: 'time', says: expect.stringContaining(says) }])
  })
})

test('the time is that of the site, with who walked and where', () => {
  const read = readRow(row({ ...gaps, time: '7:40' }), paper)
  if (read.is !== 'read') throw new Error('not read')
  const built = entriesOfRow(read, valveId)
  const [entry] = built.ok ? built.entries : []
  expect(Date.parse(entry?.takenAt ?? '')).toBe(Date.parse('2026-05-04T06:40:00Z'))
  expect(entry).toMatchObject({ valveId, takenBy: 'R. Oakes', version: 1 })
})

test('sixteenths of an inch become millimetres where this device reads gaps in them', () => {
  expect(entriesFrom({ gapLeft: '5' }, { gapUnit: '1/16 in' })).toMatchObject([{ gapLeft: 7.9375 }])
})

test('every word of the contract can be chosen', () => {
  for (const leakAfter of LeakGrade.options) expect(entriesFrom({ leakAfter })).toMatchObject([{ leak: leakAfter }])
  for (const missed of MissedReason.options) expect(entriesFrom({ missed })).toMatchObject([{ reason: missed }])
  for (const stem of StemFeel.options) expect(entriesFrom({ ...gaps, stem })).toMatchObject([{ stem }])
})
