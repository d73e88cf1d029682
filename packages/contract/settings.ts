import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { quantity } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'

/** How far a figure is to be trusted before the site has confirmed it. */
export const FigureMark = z.enum(['read', 'worked out', 'from memory', 'common practice, no source', 'set by us'])
export type FigureMark = z.infer<typeof FigureMark>

export const settingGroups = ['cutting', 'loading', 'leaks', 'follow-up', 'forecast', 'rounds', 'repacks'] as const

interface SettingAbout {
  readonly group: (typeof settingGroups)[number]
  readonly usually: number
  readonly mark: FigureMark
  /** One sentence: what it does and where the default comes from. */
  readonly why: string
}

const setting = <const Value extends z.ZodType>(value: Value, about: SettingAbout) => ({ value, ...about })
const share = (label: string, min: number, max: number) => quantity({ label, unit: 'ratio', min, max, step: 0.01 })

const minutes = (label: string, most = 480) => quantity({ label, unit: 'min', min: 0, max: most, step: 1 })

const hours = (label: string, most = 10_000) => quantity({ label, unit: 'h', min: 0, max: most, step: 0.25 })
const money = (label: string) => quantity({ label, unit: 'money', min: 0, max: 1e9, step: 1 })

const mostBetween = (criticality: string) =>
  quantity({ label: `Longest time between looks, ${criticality}`, unit: 'day', min: 1, max: 1100, step: 1 })

/** Every engineering setting of a site: its quantity, its default, how far that is to be trusted, and why it is there. */
export const settings = {
  rollDownLimit: setting(share('Roll-down limit', 0, 0.2), {
    group: 'cutting',
    usually: 0.05,
    mark: 'set by us',
    why: 'A cord this share thicker than its space may still be rolled to fit; rolling further breaks up the braid.',
  }),
  skiveAngle: setting(quantity({ label: 'Skive angle', unit: '°', min: 15, max: 75, step: 1 }), {
    group: 'cutting',
    usually: 45,
    mark: 'read',
    why: 'An article of the Fluid Sealing Association (January 2016) prefers 45° for valve stems; a handbook for pumps says about 30°.',
  }),
  jointStagger: setting(quantity({ label: 'Joint stagger', unit: '°', min: 30, max: 180, step: 5 }), {
    group: 'cutting',
    usually: 90,
    mark: 'read',
    why: 'Each joint lies this far from the one before: 90° to 180° says the Fluid Sealing Association (January 2016).',
  }),
  cordWaste: setting(share('Cord waste', 0, 0.5), {
    group: 'cutting',
    usually: 0.1,
    mark: 'set by us',
    why: 'Cord is drawn from the store with this share more, for frayed ends and short pieces.',
  }),
  stressFactor: setting(quantity({ label: 'Stress factor', unit: 'ratio', min: 1, max: 5, step: 0.1 }), {
    group: 'loading',
    usually: 1.5,
    mark: 'common practice, no source',
    why: 'The gland stress is at least this many times the pressure; the floor under it belongs to each packing family.',
  }),
  firstTorqueStep: setting(share('First torque step', 0.1, 0.49), {
    group: 'loading',
    usually: 0.3,
    mark: 'common practice, no source',
    why: 'All nuts go to this share of the full torque first, so that the follower stays level.',
  }),
  secondTorqueStep: setting(share('Second torque step', 0.5, 0.95), {
    group: 'loading',
    usually: 0.6,
    mark: 'common practice, no source',
    why: 'All nuts go to this share next; the last step is the full torque.',
  }),
  nutFactorDry: setting(share('Nut factor, dry', 0.05, 0.6), {
    group: 'loading',
    usually: 0.25,
    mark: 'from memory',
    why: 'The middle of 0.20 to 0.30; a higher nut factor asks more torque for the same load.',
  }),
  nutFactorOiled: setting(share('Nut factor, oiled', 0.05, 0.6), {
    group: 'loading',
    usually: 0.165,
    mark: 'from memory',
    why: 'The middle of 0.15 to 0.18, for clean threads with oil.',
  }),
  nutFactorPaste: setting(share('Nut factor, paste', 0.05, 0.6), {
    group: 'loading',
    usually: 0.135,
    mark: 'from memory',
    why: 'The middle of 0.11 to 0.16; pastes differ, so the figure of the one in your store is better.',
  }),
  nutFactorUnknown: setting(share('Nut factor, not known', 0.05, 0.6), {
    group: 'loading',
    usually: 0.2,
    mark: 'common practice, no source',
    why: 'Taken where nobody recorded how the threads were lubricated: the load may then be half or twice what is meant.',
  }),
  proofWarning: setting(share('Share of proof that warns', 0.2, 1), {
    group: 'loading',
    usually: 0.7,
    mark: 'set by us',
    why: 'A stud stressed beyond this share of its proof stress is shown with a warning, since the nut factor is a guess.',
  }),
  gapTolerance: setting(share('Gap tolerance after loading', 0.01, 0.3), {
    group: 'loading',
    usually: 0.05,
    mark: 'set by us',
    why: 'A gap off by more than this share of the height of the set asks whether a ring is missing, or not seated.',
  }),
  dropVolume: setting(quantity({ label: 'Volume of a drop', unit: 'mL', min: 0.01, max: 1, step: 0.01 }), {
    group: 'leaks',
    usually: 0.25,
    mark: 'read',
    why: 'Pages of the US Geological Survey say a quarter and a third of a millilitre, laboratories a twentieth: measure your own.',
  }),
  steamPrice: setting(quantity({ label: 'Price of steam, for a tonne', unit: 'money/t', min: 0, max: 100_000, step: 1 }), {
    group: 'leaks',
    usually: 30,
    mark: 'set by us',
    why: 'Turns a steam leak into money, in the money of the site: put in your own price.',
  }),
  waterPrice: setting(
    quantity({ label: 'Price of water, for a cubic metre', unit: 'money/m³', min: 0, max: 10_000, step: 0.1 }),
    {
      group: 'leaks',
      usually: 2,
      mark: 'set by us',
      why: 'Turns dripping water into money, in the money of the site: put in your own price, with treatment and drain.',
    },
  ),
  airPrice: setting(
    quantity({ label: 'Price of compressed air, for 1,000 cubic metres', unit: 'money/1000 m³', min: 0, max: 100_000, step: 1 }),
    {
      group: 'leaks',
      usually: 25,
      mark: 'set by us',
      why: 'Turns an air leak into money, counted as free air: put in your own price.',
    },
  ),
  productPrice: setting(
    quantity({ label: 'Price of what is lost, for a kilogram', unit: 'money/kg', min: 0, max: 100_000, step: 0.01 }),
    {
      group: 'leaks',
      usually: 0,
      mark: 'set by us',
      why: 'For leaks measured with a meter; while it is 0 no cost is shown for them.',
    },
  ),
  carbonOfSteam: setting(quantity({ label: 'Carbon of a tonne of steam', unit: 'kg CO2e/t', min: 0, max: 10_000, step: 1 }), {
    group: 'leaks',
    usually: 0,
    mark: 'set by us',
    why: 'It differs by fuel and boiler; while it is 0 no carbon is shown for steam.',
  }),
  carbonOfProduct: setting(
    quantity({ label: 'Warming of a kilogram of what is lost', unit: 'kg CO2e/kg', min: 0, max: 100_000, step: 0.1 }),
    {
      group: 'leaks',
      usually: 0,
      mark: 'set by us',
      why: 'For leaks measured with a meter; while it is 0 no carbon is shown for them.',
    },
  ),
  errorOfDrops: setting(share('Error of counting drops', 0, 2), {
    group: 'leaks',
    usually: 0.2,
    mark: 'set by us',
    why: 'A count of drops by eye may be off by this share either way.',
  }),
  errorOfOpening: setting(share('Error of judging an opening', 0, 2), {
    group: 'leaks',
    usually: 0.3,
    mark: 'set by us',
    why: 'A width judged by eye may be off by this share; the flow goes with its square.',
  }),
  errorOfScreening: setting(share('Error of a screening value', 0, 2), {
    group: 'leaks',
    usually: 0.1,
    mark: 'from memory',
    why: 'Meters are calibrated to about a tenth; how much one valve differs from the published average is not in it.',
  }),
  hoursPerYear: setting(quantity({ label: 'Hours under pressure in a year', unit: 'h', min: 100, max: 8784, step: 10 }), {
    group: 'leaks',
    usually: 8000,
    mark: 'set by us',
    why: 'A leak costs money only while the line is under pressure; a year has 8,760 hours.',
  }),
  retightenAfterRepack: setting(quantity({ label: 'Re-tighten after a repack', unit: 'day', min: 0.5, max: 60, step: 0.5 }), {
    group: 'follow-up',
    usually: 3,
    mark: 'read',
    why: 'New packing settles: the last re-tightening after three days in service, says the Fluid Sealing Association (January 2016).',
  }),
  lookAfterNip: setting(quantity({ label: 'Look again after a nip', unit: 'h', min: 1, max: 720, step: 1 }), {
    group: 'follow-up',
    usually: 24,
    mark: 'set by us',
    why: 'A day later it shows whether the leak has stopped, and whether the stem still moves.',
  }),
  leastBetweenLooks: setting(quantity({ label: 'Least time between routine looks', unit: 'day', min: 1, max: 60, step: 1 }), {
    group: 'follow-up',
    usually: 7,
    mark: 'set by us',
    why: 'However little travel is left, nobody is sent to look again sooner than this; a follow-up may come sooner.',
  }),
  mostBetweenHigh: setting(mostBetween('high'), {
    group: 'follow-up',
    usually: 35,
    mark: 'set by us',
    why: 'A valve of high criticality is looked at no later than this after the last look, whatever the forecast says.',
  }),
  mostBetweenOrdinary: setting(mostBetween('ordinary'), {
    group: 'follow-up',
    usually: 91,
    mark: 'set by us',
    why: 'The same for a valve of ordinary criticality.',
  }),
  mostBetweenLow: setting(mostBetween('low'), {
    group: 'follow-up',
    usually: 182,
    mark: 'set by us',
    why: 'The same for a valve of low criticality.',
  }),
  leakTarget: setting(share('Chance of an unseen leak', 0.01, 0.5), {
    group: 'forecast',
    usually: 0.1,
    mark: 'set by us',
    why: 'Looks are timed so that a leak has begun unseen with this chance; it holds on average over like valves, not for each one.',
  }),
  reserveLookChance: setting(share('Chance of no travel between looks', 0.025, 0.5), {
    group: 'forecast',
    usually: 0.1,
    mark: 'set by us',
    why: 'A gland is looked at before the chance that its travel is used up reaches this.',
  }),
  stopHorizon: setting(quantity({ label: 'Next chance to repack, in days', unit: 'day', min: 7, max: 1100, step: 1 }), {
    group: 'forecast',
    usually: 182,
    mark: 'set by us',
    why: 'Where no stop is planned, the board asks how likely the travel is used up within so many days from today.',
  }),
  bookChance: setting(share('Chance that books a repack', 0.01, 0.9), {
    group: 'forecast',
    usually: 0.3,
    mark: 'set by us',
    why: 'From this chance of running out before the next stop on, a valve stands at book.',
  }),
  watchChance: setting(share('Chance that calls for a watch', 0.005, 0.8), {
    group: 'forecast',
    usually: 0.05,
    mark: 'set by us',
    why: 'From this chance of running out before the next stop on, a valve stands at watch.',
  }),
  bookReserve: setting(quantity({ label: 'Travel that books a repack', unit: 'mm', min: 0, max: 20, step: 0.1 }), {
    group: 'forecast',
    usually: 2,
    mark: 'set by us',
    why: 'With this little travel left a valve stands at book whatever the forecast says: about two half turns of an M12 stud.',
  }),
  watchReserve: setting(quantity({ label: 'Travel that calls for a watch', unit: 'mm', min: 0, max: 40, step: 0.1 }), {
    group: 'forecast',
    usually: 4,
    mark: 'set by us',
    why: 'With this little travel left a valve stands at watch: about four half turns of an M12 stud.',
  }),
  minutesOfLook: setting(minutes('Minutes of a routine look'), {
    group: 'rounds',
    usually: 5,
    mark: 'set by us',
    why: 'At the valve: find it, look, read both gaps, take up half a turn where it asks for it, enter it.',
  }),
  minutesOfFollowUp: setting(minutes('Minutes of a follow-up'), {
    group: 'rounds',
    usually: 8,
    mark: 'set by us',
    why: 'After a repack or a nip: re-tighten evenly, try the stem, read both gaps again.',
  }),
  minutesOnPlatform: setting(minutes('Minutes more on a platform'), {
    group: 'rounds',
    usually: 1,
    mark: 'set by us',
    why: 'Added to each visit of a valve that is reached from a platform.',
  }),
  minutesOnLadder: setting(minutes('Minutes more on a ladder'), {
    group: 'rounds',
    usually: 5,
    mark: 'set by us',
    why: 'Added to each visit of a valve that is reached by a ladder: set it up, secure it, take it along.',
  }),
  minutesOnScaffold: setting(minutes('Minutes more on a scaffold'), {
    group: 'rounds',
    usually: 20,
    mark: 'set by us',
    why: 'Added to each visit of a valve that needs a scaffold, once it stands.',
  }),
  minutesInConfinedSpace: setting(minutes('Minutes more in a confined space'), {
    group: 'rounds',
    usually: 45,
    mark: 'set by us',
    why: 'Added to each visit in a confined space: permit, gas test and a second person take their time.',
  }),
  minutesToSetUp: setting(minutes('Minutes to set up an area'), {
    group: 'rounds',
    usually: 40,
    mark: 'set by us',
    why: 'Once for each area and week: permit, tools, the way there and back. An area may have its own figure.',
  }),
  windowShare: setting(share('Width of a window', 0, 0.5), {
    group: 'rounds',
    usually: 0.25,
    mark: 'set by us',
    why: 'A routine look may come earlier or later by this share of the time between looks, and by a week at least.',
  }),
  catchUpWeeks: setting(quantity({ label: 'Weeks to catch up', unit: 'week', min: 1, max: 12, step: 1 }), {
    group: 'rounds',
    usually: 2,
    mark: 'set by us',
    why: 'A look that is overdue, or was missed on a round, is planned within this many weeks.',
  }),
  easyWeekShare: setting(share('Share of hours that is easy', 0.3, 1), {
    group: 'rounds',
    usually: 0.85,
    mark: 'set by us',
    why: 'Above this share of its hours a week counts as full, and the plan would rather use another.',
  }),
  mostWeekShare: setting(share('Most of a crew’s hours', 0.5, 2), {
    group: 'rounds',
    usually: 1.2,
    mark: 'set by us',
    why: 'No week is planned beyond this share of a crew’s hours; what does not fit is listed.',
  }),
  metresForLevel: setting(quantity({ label: 'A level of stairs is worth', unit: 'm', min: 0, max: 200, step: 1 }), {
    group: 'rounds',
    usually: 20,
    mark: 'set by us',
    why: 'The walking order weighs one level of stairs as this many metres on the flat.',
  }),
  metresInAMinute: setting(quantity({ label: 'Metres walked in a minute', unit: 'm/min', min: 10, max: 120, step: 1 }), {
    group: 'rounds',
    usually: 50,
    mark: 'set by us',
    why: 'Turns the way of a round into minutes: slower than a free walk, with tools and through a plant.',
  }),
  hourOfSettingOut: setting(quantity({ label: 'Hour of setting out', unit: 'h', min: 0, max: 23.5, step: 0.5 }), {
    group: 'rounds',
    usually: 7,
    mark: 'set by us',
    why: 'When rounds begin in the calendar, by the clock of the site.',
  }),
  fittingHoursOnLine: setting(hours('Hours of fitting in a fortnight'), {
    group: 'repacks',
    usually: 24,
    mark: 'set by us',
    why: 'For repacks while the plant runs; outages have hours of their own.',
  }),
  scaffoldingHoursOnLine: setting(hours('Hours of scaffolding in a fortnight'), {
    group: 'repacks',
    usually: 8,
    mark: 'set by us',
    why: 'The same for scaffolds that repacks need while the plant runs.',
  }),
  isolatingHoursOnLine: setting(hours('Hours of isolating in a fortnight'), {
    group: 'repacks',
    usually: 10,
    mark: 'set by us',
    why: 'The same for those who isolate, drain and hand over while the plant runs.',
  }),
  hoursOfRepack: setting(hours('Hours to repack a valve', 100), {
    group: 'repacks',
    usually: 2,
    mark: 'set by us',
    why: 'Fitting alone, for one valve: out with the old rings, clean, measure, load ring by ring, prove.',
  }),
  hoursToScaffold: setting(hours('Hours for a scaffold', 200), {
    group: 'repacks',
    usually: 4,
    mark: 'set by us',
    why: 'Once for a boundary with a valve that needs a scaffold: up and down again.',
  }),
  hoursToIsolate: setting(hours('Hours to isolate a boundary', 200), {
    group: 'repacks',
    usually: 1.5,
    mark: 'set by us',
    why: 'Once for all valves that are isolated together: isolate, lock, drain, prove, and hand back.',
  }),
  planChance: setting(share('Chance that brings a valve into the plan', 0.001, 0.9), {
    group: 'repacks',
    usually: 0.1,
    mark: 'set by us',
    why: 'A valve is planned for a repack when it is this likely to run out before the plan ends, or stands at book or spent.',
  }),
  costOfRunningOut: setting(money('Price of running out of travel'), {
    group: 'repacks',
    usually: 4000,
    mark: 'set by us',
    why: 'What it costs when a valve leaks and cannot be taken up any more: put in your own, it decides what is planned early.',
  }),
  costOfLeak: setting(money('Price of a leak'), {
    group: 'repacks',
    usually: 300,
    mark: 'set by us',
    why: 'What it costs when a gland leaks and is taken up: the walk, the clean-up, what was lost.',
  }),
  costOfRepack: setting(money('Price of a repack'), {
    group: 'repacks',
    usually: 350,
    mark: 'set by us',
    why: 'Cord, hours and isolation: the share of it is wasted that a packing had left when it is renewed early.',
  }),
} as const satisfies Record<string, SettingAbout & { readonly value: z.ZodType }>

export type SettingKey = keyof typeof settings
export type SettingValues = { readonly [Key in SettingKey]: z.output<(typeof settings)[Key]['value']> }

export const settingKeys = Object.keys(settings) as [SettingKey, ...SettingKey[]]
export const SettingKey = z.enum(settingKeys)

/** Who confirmed a figure, and when: null while it is still the default. */
export const Confirmed = z.object({ by: z.string(), at: z.iso.datetime() })
export type Confirmed = z.infer<typeof Confirmed>

/** Any figure of the list; its own quantity judges it once the key is known. */
const anyFigure = quantity({ label: 'Figure', unit: '', min: -1e9, max: 1e9, step: 0.001 })

const Setting = z.object({ key: SettingKey, value: anyFigure, confirmed: Confirmed.nullable() })
export type Setting = z.infer<typeof Setting>

export const listSettings = endpoint({
  method: 'GET',
  path: '/api/settings',
  who: everybody,
  ok: z.object({ settings: z.array(Setting) }),
  status: 200,
})

/** Confirms the figure that stands, or puts another in its place. `seen` is the figure it was decided from. */
export const confirmSetting = endpoint({
  method: 'PUT',
  path: '/api/settings/:key',
  who: registerKeepers,
  params: z.strictObject({ key: SettingKey }),
  body: z.strictObject({ seen: anyFigure, value: anyFigure }),
  ok: Setting,
  status: 200,
})
