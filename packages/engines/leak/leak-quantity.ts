import { constructorOf, type Quantity } from '@glandkeeper/units/quantity'

export type LitrePerHour = Quantity<'L/h'>
export type LitrePerYear = Quantity<'L/y'>
export type CubicMetrePerHour = Quantity<'m³/h'>
export type CubicMetrePerYear = Quantity<'m³/y'>
/** Cubic feet of free air a minute. */
export type CubicFootPerMinute = Quantity<'cfm'>
export type KilogramPerCubicMetre = Quantity<'kg/m³'>
export type TonnePerYear = Quantity<'t/y'>
export type KilowattHourPerYear = Quantity<'kWh/y'>
export type HourPerYear = Quantity<'h/y'>
/** Helium leak of a test. */
export type MillibarLitrePerSecond = Quantity<'mbar·L/s'>
/** Kilograms of carbon dioxide that would warm as much. */
export type KilogramCarbonDioxidePerYear = Quantity<'kg CO2e/y'>
export type KilogramCarbonDioxidePerKilowattHour = Quantity<'kg CO2e/kWh'>
/** A sum in the plant's own currency, which the program does not know. */
export type Money = Quantity<'money'>

export const litresPerHour = constructorOf('L/h')
export const litresPerYear = constructorOf('L/y')
export const cubicMetresPerHour = constructorOf('m³/h')
export const cubicMetresPerYear = constructorOf('m³/y')
export const cubicFeetPerMinute = constructorOf('cfm')
export const kilogramsPerCubicMetre = constructorOf('kg/m³')
export const tonnesPerYear = constructorOf('t/y')
export const kilowattHoursPerYear = constructorOf('kWh/y')
export const hoursPerYear = constructorOf('h/y')
export const millibarLitresPerSecond = constructorOf('mbar·L/s')
export const kilogramsCarbonDioxidePerYear = constructorOf('kg CO2e/y')
export const kilogramsCarbonDioxidePerKilowattHour = constructorOf('kg CO2e/kWh')
export const money = constructorOf('money')
