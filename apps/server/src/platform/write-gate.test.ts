import { expect, it } from 'vitest'
import { Refusal } from './problem.ts'
import { WriteGate } from './write-gate.ts'

it('refuses as busy when too many wait, and lets writes pass again afterwards', async () => {
  const gate = new WriteGate(2)
  let open = () => {}
  const first = gate.pass(() => new Promise<void>((resolve) => (open = resolve)))
  const second = gate.pass(async () => 'second')
  await expect(gate.pass(async () => 'third')).rejects.toMatchObject({ code: 'store/busy' } satisfies Partial<Refusal>)
  open()
  await first
  expect(await second).toBe('second')
  expect(await gate.pass(async () => 'later')).toBe('later')
})
