import { quantities } from '@glandkeeper/contract/quantity'
import {
  confirmSetting,
  listSettings,
  settingGroups,
  type SettingKey,
  settingKeys,
  settings,
} from '@glandkeeper/contract/settings'
import { describe, expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { siteSettings } from './index.ts'

type Server = Awaited<ReturnType<typeof aServer>>
const put = (server: Server, key: SettingKey, seen: number, value: number, role: 'planner' | 'engineer' = 'engineer') =>
  server.call(role, confirmSetting, { params: { key }, body: { seen, value } })
const shown = async (server: Server, key: SettingKey) =>
  (await server.expectOk('fitter', listSettings)).settings.find((setting) => setting.key === key)

describe('the settings of a site', () => {
  it('are the defaults until somebody confirms one, and every default fits its own range', async () => {
    const server = await aServer()
    const { settings: listed } = await server.expectOk('fitter', listSettings)
    expect(listed.map(({ key }) => key)).toEqual(settingKeys)
    expect(listed.every(({ key, value, confirmed }) => value === settings[key].usually && confirmed === null)).toBe(true)
    for (const key of settingKeys) {
      expect([key, settings[key].value.safeParse(settings[key].usually).success]).toEqual([key, true])
      expect(quantities.has(settings[key].value)).toBe(true)
      expect(settingGroups).toContain(settings[key].group)
      expect(settings[key].why).toMatch(/\.$/)
    }
    expect(await siteSettings(server.store.read, server.siteId)).toMatchObject({ stressFactor: 1.5, retightenAfterRepack: 3 })
  })

  it('keep who confirmed or changed one, with before and after, and give other features the new figure', async () => {
    const server = await aServer()
    expect(await put(server, 'nutFactorPaste', 0.135, 0.135)).toMatchObject({ ok: true, value: { value: 0.135 } })
    expect(await put(server, 'nutFactorPaste', 0.135, 0.15, 'planner')).toMatchObject({ ok: true })
    expect(await shown(server, 'nutFactorPaste')).toEqual({
      key: 'nutFactorPaste',
      value: 0.15,
      confirmed: { by: 'The planner', at: server.now.toISOString() },
    })
    expect((await siteSettings(server.store.read, server.siteId)).nutFactorPaste).toBe(0.15)
    const notes = await server.store.read.registerChange.findMany({ where: { subject: 'site' }, orderBy: { id: 'asc' } })
    expect(notes.map(({ what, before, after }) => [what, before, after])).toEqual([
      ['setting confirmed: Nut factor, paste', '{"nutFactorPaste":0.135}', '{"nutFactorPaste":0.135}'],
      ['setting changed: Nut factor, paste', '{"nutFactorPaste":0.135}', '{"nutFactorPaste":0.15}'],
    ])
  })

  it('refuse a figure outside the range, a key that is none, and a change made from an old page', async () => {
    const server = await aServer()
    expect(await put(server, 'jointStagger', 90, 200)).toMatchObject({
      status: 422,
      problem: {
        code: 'setting/out-of-range',
        errors: [{ pointer: '#/value', detail: 'Joint stagger: at most 180 °' }],
      },
    })
    expect(await put(server, 'toString' as SettingKey, 1, 1)).toMatchObject({ status: 422, problem: { code: 'request/invalid' } })
    expect((await put(server, 'jointStagger', 90, 120)).status).toBe(200)
    expect(await put(server, 'jointStagger', 90, 100)).toMatchObject({
      status: 409,
      problem: { code: 'setting/changed-meanwhile', detail: 'you saw 90, it is 120 now' },
    })
    expect(await shown(server, 'jointStagger')).toMatchObject({ value: 120 })
  })

  it('confirmed at once by two people from one page: one of them is told', async () => {
    const server = await aServer()
    const answers = await Promise.all([put(server, 'cordWaste', 0.1, 0.2), put(server, 'cordWaste', 0.1, 0.3, 'planner')])
    expect(answers.map(({ status }) => status).toSorted((a, b) => a - b)).toEqual([200, 409])
  })

  it('of one site are not those of another', async () => {
    const server = await aServer()
    await server.store.write((write) =>
      write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: server.now } }),
    )
    await put(server, 'cordWaste', 0.1, 0.2)
    expect((await siteSettings(server.store.read, 'other')).cordWaste).toBe(0.1)
  })
})
