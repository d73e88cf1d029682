import { expect, it } from 'vitest'
import { isOfThisMachineOnly } from './reachable.ts'

it.each(['localhost', 'LOCALHOST', 'mill.localhost', '127.0.0.1', '127.10.0.3', '[::1]'])(
  '%s is of no use on a label',
  (name) => {
    expect(isOfThisMachineOnly(name)).toBe(true)
  },
)

it.each(['mill.example', 'localhost.mill.example', '10.0.0.4', '192.168.127.0', '[fd00::1]'])('a phone may get to %s', (name) => {
  expect(isOfThisMachineOnly(name)).toBe(false)
})
