import { quantity } from '@glandkeeper/contract/quantity'
import { kilogramsCarbonDioxidePerKilowattHour, money } from '@glandkeeper/engines/leak/leak-quantity'
import { yearlyCarbon, yearlyFuelCost, yearlySteamCost } from '@glandkeeper/engines/leak/yearly-cost'
import { liquidAt } from '@glandkeeper/engines/steam/region1'
import { saturatedSteam } from '@glandkeeper/engines/steam/saturated-steam'
import { pressure } from '@glandkeeper/contract/valves'
import { absolute, ratio } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { at } from '../at-input.ts'
import { calculator } from '../calculator.ts'
import { massFlow, share } from '../figures.ts'
import { hoursAYear } from './hours-a-year.ts'

const cost = (label: string) => quantity({ label, unit: 'money', min: 0, max: 1e15, step: 1 })
const energy = (label: string) => quantity({ label, unit: 'kWh/y', min: 0, max: 1e15, step: 1 })

export const steamCost = calculator({
  name: 'steam-cost',
  shelf: 'leak',
  title: 'What lost steam costs',
  question: 'What does a steam leak cost in a year?',
  input: z.strictObject({
    flow: massFlow('Steam lost'),
    hours: hoursAYear,
    pricePerTonne: quantity({ label: 'Price of a tonne of steam', unit: 'money', min: 0, max: 1e6, step: 0.01 }).default(
      money(30),
    ),
    pressure,
    feedTemperature: quantity({ label: 'Feed water', unit: '°C', min: 0, max: 200, step: 1 }),
    boilerEfficiency: share('Boiler efficiency', 1.1).default(ratio(0.85)),
    pricePerKilowattHour: quantity({ label: 'Price of a kWh of fuel', unit: 'money', min: 0, max: 1000, step: 0.001 }).default(
      money(0.05),
    ),
    carbonFactor: quantity({ label: 'Carbon of a kWh of fuel', unit: 'kg CO2e/kWh', min: 0, max: 10, step: 0.001 }).default(
      kilogramsCarbonDioxidePerKilowattHour(0.2),
    ),
  }),
  output: z.object({
    cost: cost('A year, by the price of steam'),
    steam: quantity({ label: 'Steam', unit: 't/y', min: 0, max: 1e12, step: 0.1 }),
    fuelCost: cost('A year, by the fuel'),
    heat: energy('Heat put into the steam'),
    fuel: energy('Fuel'),
    carbon: quantity({ label: 'Carbon', unit: 'kg CO2e/y', min: 0, max: 1e15, step: 1 }),
  }),
  example: {
    flow: 10,
    hours: 8760,
    pricePerTonne: 30,
    pressure: 10,
    feedTemperature: 100,
    boilerEfficiency: 0.85,
    pricePerKilowattHour: 0.05,
    carbonFactor: 0.2,
  },
  notes: {
    pricePerTonne: 'in the money of your site',
    carbonFactor: 'differs by fuel and year: yours decides',
    boilerEfficiency: 'on the same heating value as the price',
  },
  formula: [
    'cost = flow · hours / 1 000 · price',
    'heat = flow · hours · (enthalpy of steam − enthalpy of feed water) / 3 600',
    'fuel = heat / efficiency',
  ],
  limits: 'While the leak stays as it is: most grow. Prices and the carbon factor are placeholders until you put in yours.',
  sources: ['SRC-518', 'SRC-519', 'SRC-521', 'SRC-553'],
  compute({
    flow,
    hours,
    pricePerTonne,
    pressure: gauge,
    feedTemperature,
    boilerEfficiency,
    pricePerKilowattHour,
    carbonFactor,
  }) {
    const steam = saturatedSteam(absolute(gauge))
    if (!steam.ok) return steam
    const bySteam = yearlySteamCost({ flow, hours, pricePerTonne })
    if (!bySteam.ok) return bySteam
    const feed = liquidAt({ temperature: feedTemperature, pressure: absolute(gauge) })
    if (!feed.ok) return at(feed, { temperature: 'feedTemperature' })
    const byFuel = yearlyFuelCost({
      flow,
      hours,
      steamEnthalpy: steam.enthalpyOfSteam,
      feedEnthalpy: feed.enthalpy,
      boilerEfficiency,
      fuelPrice: pricePerKilowattHour,
    })
    if (!byFuel.ok)
      return at(byFuel, { steamEnthalpy: 'pressure', feedEnthalpy: 'feedTemperature', fuelPrice: 'pricePerKilowattHour' })
    const carbon = yearlyCarbon({ energy: byFuel.fuel, factor: carbonFactor })
    if (!carbon.ok) return at(carbon, { energy: 'flow', factor: 'carbonFactor' })
    return {
      ok: true,
      cost: bySteam.cost,
      steam: bySteam.steam,
      fuelCost: byFuel.cost,
      heat: byFuel.heat,
      fuel: byFuel.fuel,
      carbon: carbon.carbon,
    }
  },
})
