import { benchEndpoint } from '@glandkeeper/bench/calculator'
import { calculators } from '@glandkeeper/bench/calculators'
import { glandTorque } from '@glandkeeper/bench/load/gland-torque'
import { ringLength } from '@glandkeeper/bench/cut/ring-length'
import { describe, expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'

describe('the bench over the interface', () => {
  it('computes each calculator’s example as the engine does', async () => {
    const server = await aServer()
    for (const calculator of calculators) {
      const answer = await server.expectOk('fitter', benchEndpoint(calculator), { body: calculator.example })
      const outcome = calculator.compute(calculator.input.parse(calculator.example))
      expect([calculator.name, answer]).toEqual([calculator.name, calculator.output.parse(outcome)])
    }
  })

  it('cuts a ring of 8.5 mm for a stem of 28 mm to π · 36.5 mm', async () => {
    const server = await aServer()
    const answer = await server.expectOk('fitter', benchEndpoint(ringLength), { body: { stemDiameter: 28, section: 8.5 } })
    expect(answer.edgeLength).toBeCloseTo(Math.PI * 36.5, 9)
  })

  it('refuses what cannot be with a code, a sentence and the input at fault', async () => {
    const server = await aServer()
    const send = (payload: object) =>
      server.app.inject({
        method: 'POST',
        url: '/api/bench/gland-torque',
        headers: { cookie: server.cookieOf('engineer') },
        payload,
      })
    const body = glandTorque.example
    const narrow = await send({ ...body, boxBore: 20 })
    expect(narrow.json()).toMatchObject({ status: 422, code: 'bench/not-computed', errors: [{ pointer: '#/boxBore' }] })
    const thread = await send({ ...body, studThread: 'M12x9' })
    expect(thread.json()).toMatchObject({ status: 422, errors: [{ pointer: '#/studThread' }] })
    const unknown = await send({ ...body, bore: 20 })
    expect(unknown.json()).toMatchObject({ status: 422, code: 'request/invalid', errors: [{ pointer: '#/bore' }] })
    const notANumber = await send({ ...body, boxBore: '45' })
    expect(notANumber.json()).toMatchObject({ status: 422, errors: [{ pointer: '#/boxBore' }] })
  })
})
