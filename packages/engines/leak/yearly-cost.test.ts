import { kilogramsPerHour, litresPerDay, ratio } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { kilojoulesPerKilogram } from '../steam/steam-quantity.ts'
import {
  cubicMetresPerHour,
  type HourPerYear,
  hoursPerYear,
  kilogramsCarbonDioxidePerKilowattHour,
  kilowattHoursPerYear,
  type Money,
  money,
} from './leak-quantity.ts'
import { yearlyAirCost, yearlyCarbon, yearlyFuelCost, yearlySteamCost, yearlyWaterCost } from './yearly-cost.ts'

const fuel = {
  flow: kilogramsPerHour(36),
  steamEnthalpy: kilojoulesPerKilogram(2780),
  feedEnthalpy: kilojoulesPerKilogram(280),
  boilerEfficiency: ratio(0.8),
  fuelPrice: money(0.05),
  hours: hoursPerYear(1000),
}

describe('a leak in a year', () => {
  it('steam: 10 kg/h * 5000 h = 50 t at 30 is 1500', () => {
    const input = { flow: kilogramsPerHour(10), pricePerTonne: money(30), hours: hoursPerYear(5000) }
    expect(yearlySteamCost(input)).toEqual({ ok: true, steam: 50, cost: 1500 })
  })

  it('fuel: 36 kg/h * 1000 h * 2500 kJ/kg / 3600 = 25,000 kWh; / 0.8 = 31,250 kWh; at 0.05 is 1562.50', () => {
    expect(yearlyFuelCost(fuel)).toEqual({ ok: true, heat: 25_000, fuel: 31_250, cost: 1562.5 })
  })

  it('water: 100 L a day for 8760 h is 36.5 m³, at 4 is 146', () => {
    const found = yearlyWaterCost({ flow: litresPerDay(100), pricePerCubicMetre: money(4) })
    expect(found).toEqual({ ok: true, water: 36.5, cost: 146 })
  })

  it('air: 5 m³/h for 8760 h is 43,800 m³, at 20 for a thousand is 876', () => {
    const found = yearlyAirCost({ freeAir: cubicMetresPerHour(5), pricePerThousandCubicMetres: money(20) })
    expect(found).toEqual({ ok: true, air: 43_800, cost: 876 })
  })

  it('carbon: 31,250 kWh * 0.2 = 6250 kg', () => {
    const input = { energy: kilowattHoursPerYear(31_250), factor: kilogramsCarbonDioxidePerKilowattHour(0.2) }
    expect(yearlyCarbon(input)).toEqual({ ok: true, carbon: 6250 })
  })

  it.each([
    ['steam colder than feed', { feedEnthalpy: kilojoulesPerKilogram(2780) }, 'leak/no-heat', 'steamEnthalpy'],
    ['an efficiency of 80 for 80 %', { boilerEfficiency: ratio(80) }, 'leak/efficiency', 'boilerEfficiency'],
    ['no efficiency', { boilerEfficiency: ratio(0) }, 'leak/efficiency', 'boilerEfficiency'],
    ['a price below nought', { fuelPrice: money(-1) }, 'number/negative', 'fuelPrice'],
    ['a price that is no number', { fuelPrice: Number.NaN as Money }, 'number/negative', 'fuelPrice'],
    ['more hours than a year', { hours: hoursPerYear(9000) }, 'leak/hours', 'hours'],
    ['no hours', { hours: 0 as HourPerYear }, 'number/not-positive', 'hours'],
  ])('refuses %s', (_, wrong, code, field) => {
    expect(yearlyFuelCost({ ...fuel, ...wrong })).toMatchObject({ ok: false, problem: { code, field } })
  })

  it('names the input that made a product too large', () => {
    expect(yearlySteamCost({ flow: kilogramsPerHour(1e300), pricePerTonne: money(1e300) })).toMatchObject({
      problem: { code: 'number/out-of-range', field: 'pricePerTonne' },
    })
  })

  it('takes money and flow, not bare numbers or one for the other', () => {
    // @ts-expect-error a bare number is no money
    yearlySteamCost({ flow: kilogramsPerHour(1), pricePerTonne: 30 })
    // @ts-expect-error litres a day are no kilograms an hour
    yearlySteamCost({ flow: litresPerDay(1), pricePerTonne: money(30) })
  })
})
