import { sendEvents } from '@glandkeeper/contract/events'
import { printLeakHistory } from '@glandkeeper/contract/leaks'
import { addValve } from '@glandkeeper/contract/valves'
import { aDeferral, aLeak, aNip, aReading, aRepack } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { printedPages } from '../../../testing/printed.ts'

const SLOW_MACHINE = 60_000
const at = (day: string) => `${day}T08:00:00Z`

it(
  'the leak history is printed with every leak, its steps and what changed before, on sheets that say what they are',
  { timeout: SLOW_MACHINE },
  async () => {
    const { app, cookieOf, expectOk } = await aServer()
    const { valveId } = await expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1' }) })
    const nips = ['2025-10-01', '2025-11-10', '2025-12-15', '2026-01-05', '2026-01-20']
    const events = [
      aRepack({ valveId, takenAt: at('2025-09-01'), gapLeft: 18, gapRight: 18 }),
      ...nips.map((day) => aNip({ valveId, takenAt: at(day), leakBefore: 'dry', leakAfter: undefined })),
      aLeak({ valveId, takenAt: at('2026-03-02'), leak: 'drip' }),
      aDeferral({ valveId, takenAt: at('2026-03-03'), until: '2026-06-01' }),
      aNip({ valveId, takenAt: at('2026-03-04'), leakBefore: undefined, leakAfter: undefined }),
      aReading({ valveId, takenAt: at('2026-03-05'), leak: 'dry' }),
    ]
    await expectOk('fitter', sendEvents, { body: { events } })
    const answer = await app.inject({
      url: printLeakHistory.path.replace(':tag', 'BH-1'),
      headers: { cookie: cookieOf('engineer') },
    })
    expect([answer.statusCode, answer.headers['content-type']]).toEqual([200, 'application/pdf'])
    expect(answer.headers['content-disposition']).toBe('inline; filename="leak-history-BH-1.pdf"')
    const pages = await printedPages(answer.rawPayload)
    const says = pages
      .flatMap(({ pieces }) => pieces.map((piece) => piece.says))
      .join(' ')
      .replaceAll(/\s+/gu, ' ')
    expect(says).toContain('2 Mar 2026 · drip · seen without a leak after one attempt')
    expect(says).toContain('Put off until 1 Jun 2026.')
    expect(says).toMatch(/nips came closer, from 38 to 18 days/)
    expect(says).toContain('needs a shutdown')
    expect(says).toContain('it does not authorise work')
    expect(pages).toHaveLength(1)
  },
)
