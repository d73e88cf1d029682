import { expect, test } from 'vitest'
import { waitingInWords } from './words.ts'

const calm = {
  waiting: 0,
  needYou: 0,
  photos: 0,
  lastSync: '4 May 09:12',
  isReached: true,
  isReading: false,
  clockAheadMinutes: 0,
  freeMegabytes: 900,
  fault: null,
  isSignedOut: false,
}

test.each([
  [{}, 'last sync 4 May 09:12', false],
  [{ waiting: 3 }, '3 on this device, last sync 4 May 09:12', false],
  [{ waiting: 2, needYou: 1 }, '3 on this device, 1 needs you, last sync 4 May 09:12', true],
  [{ photos: 1, isReached: false }, '1 photo, last sync 4 May 09:12, no signal', false],
  [{ waiting: 1, isSignedOut: true }, '1 on this device, sign in to send, last sync 4 May 09:12', true],
  [{ lastSync: null, isReading: true }, 'reading the register', false],
  [{ freeMegabytes: 12 }, 'last sync 4 May 09:12, only 12 MB free on this device', true],
  [{ freeMegabytes: null }, 'last sync 4 May 09:12', false],
  [{ clockAheadMinutes: 2 }, 'last sync 4 May 09:12', false],
  [{ clockAheadMinutes: 180 }, 'last sync 4 May 09:12, the clock of this device is 3 h ahead', true],
  [{ clockAheadMinutes: -7 }, 'last sync 4 May 09:12, the clock of this device is 7 min behind', true],
  [{ lastSync: null }, 'not ready for work without signal', false],
  [{ fault: 'full' }, 'this device keeps nothing: entries would be lost', true],
])('%j says "%s"', (change, says, needsYou) => {
  expect(waitingInWords({ ...calm, ...change })).toEqual({ says, needsYou })
})
