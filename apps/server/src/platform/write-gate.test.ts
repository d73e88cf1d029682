import { expect, it } from 'vitest'
import { Refusal } from './problem.ts'
import { WriteGate } from './write-gate.ts'

it('lets the next write in only when the one before has ended, in the order asked', async () => {
  const gate = new WriteGate(10)
  const order: string[] = []
  let open = () => {}
  const first = gate.pass(async () => {
    order.push('first begins')
    await new Promise<void>((resolve) => (open = resolve))
    order.push('first ends')
  })
  const others = ['second', 'third'].map((name) => gate.pass(async () => void order.push(name)))
  await new Promise((resolve) => setTimeout(resolve, 20))
  expect(order).toEqual(['first begins'])
  open()
  await Promise.all([first, ...others])
  expect(order).toEqual(['first begins', 'first ends', 'second', 'third'])
})

it('lets the next write in after one that threw', async () => {
  const gate = new WriteGate(10)
  const failing = gate.pass(() => Promise.reject(new Error('no')))
  const next = gate.pass(async () => 'next')
  await expect(failing).rejects.toThrow('no')
  expect(await next).toBe('next')
})

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
