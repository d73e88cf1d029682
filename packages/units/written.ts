import { MILLIMETRES_PER_INCH } from './convert.ts'

/** How a unit is written, and how many of the base unit one of it is. `offset` is added first: degrees Fahrenheit. */
interface Spelling {
  readonly names: readonly string[]
  readonly factor: number
  readonly offset?: number
}

const POUND_FORCE_N = 4.4482216152605
const PSI_MPA = POUND_FORCE_N / MILLIMETRES_PER_INCH ** 2
const FOOT_POUND_NM = (POUND_FORCE_N * 12 * MILLIMETRES_PER_INCH) / 1000

const stress = (perMegapascal: number): readonly Spelling[] => [
  { names: ['mpa', 'n/mm2', 'n/mm²'], factor: perMegapascal },
  { names: ['bar', 'barg', 'bar g'], factor: perMegapascal / 10 },
  { names: ['psi', 'psig', 'lb/in2', 'lbf/in2'], factor: perMegapascal * PSI_MPA },
  { names: ['ksi'], factor: perMegapascal * PSI_MPA * 1000 },
  { names: ['kpa'], factor: perMegapascal / 1000 },
]

/** Every unit the program computes in, and the ways people write something that can be turned into it. */
export const spellings: Readonly<Record<string, readonly Spelling[]>> = {
  mm: [
    { names: ['mm'], factor: 1 },
    { names: ['cm'], factor: 10 },
    { names: ['m'], factor: 1000 },
    { names: ['in', 'in.', 'inch', 'inches', '"', '″', '”'], factor: MILLIMETRES_PER_INCH },
    { names: ['ft', 'foot', 'feet', "'"], factor: 12 * MILLIMETRES_PER_INCH },
  ],
  MPa: stress(1),
  bar: stress(10),
  '°C': [
    { names: ['°c', 'c', 'degc'], factor: 1 },
    { names: ['°f', 'f', 'degf'], factor: 5 / 9, offset: -32 },
    { names: ['k'], factor: 1, offset: -273.15 },
  ],
  N: [
    { names: ['n'], factor: 1 },
    { names: ['kn'], factor: 1000 },
    { names: ['lbf', 'lb', 'lbs'], factor: POUND_FORCE_N },
    { names: ['kgf', 'kg'], factor: 9.80665 },
  ],
  'N·m': [
    { names: ['n·m', 'nm', 'n m', 'n.m', 'n-m'], factor: 1 },
    {
      names: ['ft·lb', 'ft lb', 'ftlb', 'ft-lb', 'ft.lb', 'ft lbf', 'ft-lbf', 'lbf ft', 'lb ft', 'lb-ft'],
      factor: FOOT_POUND_NM,
    },
    { names: ['in·lb', 'in lb', 'inlb', 'in-lb', 'in lbf', 'lbf in'], factor: FOOT_POUND_NM / 12 },
    { names: ['kgf m', 'kg m', 'kgm'], factor: 9.80665 },
  ],
  '°': [{ names: ['°', 'deg', 'degrees', 'degree'], factor: 1 }],
  turn: [
    { names: ['turn', 'turns'], factor: 1 },
    { names: ['flat', 'flats'], factor: 1 / 6 },
  ],
  mL: [
    { names: ['ml', 'cm3', 'cm³', 'cc'], factor: 1 },
    { names: ['l', 'litre', 'litres', 'liter'], factor: 1000 },
  ],
  'kg/h': [
    { names: ['kg/h'], factor: 1 },
    { names: ['lb/h', 'lb/hr'], factor: 0.45359237 },
    { names: ['g/h'], factor: 0.001 },
  ],
  ratio: [
    { names: ['ratio'], factor: 1 },
    { names: ['%', 'percent'], factor: 0.01 },
  ],
}

/** What stands beside a figure of ours for people who think in inches. */
export const inchCounterparts: Readonly<Record<string, { readonly unit: string; readonly decimals: number }>> = {
  mm: { unit: 'in', decimals: 3 },
  MPa: { unit: 'psi', decimals: 0 },
  bar: { unit: 'psi', decimals: 0 },
  '°C': { unit: '°F', decimals: 0 },
  N: { unit: 'lbf', decimals: 0 },
  'N·m': { unit: 'ft·lb', decimals: 1 },
  'kg/h': { unit: 'lb/h', decimals: 2 },
}
