import { pressure } from '@glandkeeper/contract/valves'
import { steamByEachMethod } from '@glandkeeper/engines/leak/steam-orifice'
import { saturatedSteam } from '@glandkeeper/engines/steam/saturated-steam'
import { quantity } from '@glandkeeper/contract/quantity'
import { absolute } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator } from '../calculator.ts'
import { absolutePressure, massFlow, share } from '../figures.ts'
import { opening } from './opening.ts'

const enthalpy = (label: string) => quantity({ label, unit: 'kJ/kg', min: 0, max: 5000, step: 0.1 })

export const steamLoss = calculator({
  name: 'steam-loss',
  shelf: 'leak',
  title: 'Steam through an opening',
  question: 'How much steam blows away, by which method?',
  input: z.strictObject({ opening, pressure }),
  output: z.object({
    figures: z
      .array(
        z.object({
          method: z.string().meta({ title: 'Method' }),
          flow: massFlow('Steam'),
          coefficient: share('Share of the ideal'),
          validity: z.string().meta({ title: 'Holds for' }),
        }),
      )
      .meta({ title: 'Three methods, which differ' }),
    absolutePressure,
    temperature: quantity({ label: 'Boils at', unit: '°C', min: 0, max: 374, step: 0.1 }).nullable(),
    heatOfEvaporation: enthalpy('Heat to evaporate').nullable(),
    enthalpyOfSteam: enthalpy('Heat in the steam').nullable(),
  }),
  example: { opening: 1, pressure: 10 },
  notes: {
    opening: 'a round hole that would pass as much: a gland leaks through a thin ring',
    pressure: 'above atmosphere, as the gauge shows',
  },
  formula: ['flow = k · area · absolute pressure', 'k = 0.5244 kg/h for mm² and bar (ideal), 0.73 of it, 0.60 of it'],
  limits:
    'Dry saturated steam blowing to the open, above about 0.75 bar on the gauge. The three methods differ by two thirds: the figure carries its name. Wet steam and superheat are not known here.',
  sources: ['SRC-504', 'SRC-505', 'SRC-506', 'SRC-507', 'SRC-553'],
  caution: 'Steam from a gland may be invisible: never look for it with a hand.',
  compute({ opening: diameter, pressure: gauge }) {
    const before = absolute(gauge)
    const found = steamByEachMethod({ opening: { diameter }, pressure: before })
    if (!found.ok) return found
    const steam = saturatedSteam(before)
    return {
      ok: true,
      figures: found.figures.map((figure) => ({ ...figure })),
      absolutePressure: before,
      temperature: steam.ok ? steam.temperature : null,
      heatOfEvaporation: steam.ok ? steam.heatOfEvaporation : null,
      enthalpyOfSteam: steam.ok ? steam.enthalpyOfSteam : null,
    }
  },
})
