/**
 * What a plan of rounds of one crew must keep to, as a linear model. It says less than the real task: of the hours of an
 * area only their running total is held, between what must and what can be done by each week. Every plan keeps to that,
 * so nothing it allows costs more than the best plan, and what is proved of its least cost bounds all plans from below.
 */
export class PlanModel {
  #columns = { cost: [], lower: [], upper: [], isWhole: [] }
  #rows = { lower: [], upper: [], starts: [0], indices: [], values: [] }
  /** By week, the columns that are hours of the crew, each with its hours. */
  #work

  #holdsStretches

  /** @param holdsStretches also that windows within a stretch of weeks are done in it: closer, but many rows */
  constructor({ weeks, crews: [crew], areas, visits, rules }, holdsStretches = false) {
    this.#holdsStretches = holdsStretches
    this.#work = Array.from({ length: weeks }, () => [])
    const byArea = new Map(areas.map(({ id }) => [id, []]))
    for (const visit of visits) byArea.get(visit.areaId).push(visit)
    for (const area of areas) if (byArea.get(area.id).length > 0) this.#addArea(area, byArea.get(area.id), weeks)
    for (const [week, hours] of crew.hours.entries()) this.#level(week, hours, rules)
  }

  /** As the solver takes it. */
  arrays(hasWhole) {
    const { cost, lower, upper, isWhole } = this.#columns
    const rows = this.#rows
    const size = { numCols: cost.length, numRows: rows.lower.length }
    return {
      ...size,
      colCost: Float64Array.from(cost),
      colLower: Float64Array.from(lower),
      colUpper: Float64Array.from(upper),
      rowLower: Float64Array.from(rows.lower),
      rowUpper: Float64Array.from(rows.upper),
      ...(hasWhole && { integrality: Int32Array.from(isWhole) }),
      matrix: {
        format: 'csr',
        ...size,
        starts: Int32Array.from(rows.starts),
        indices: Int32Array.from(rows.indices),
        values: Float64Array.from(rows.values),
      },
    }
  }

  #addArea({ setUpHours }, visits, weeks) {
    const hoursOf = (isMeant) => visits.reduce((sum, visit) => (isMeant(visit) ? sum + visit.hours : sum), 0)
    const opens = []
    const totals = []
    for (let week = 0; week < weeks; week += 1) {
      const most = hoursOf(({ earliest, latest }) => earliest <= week && week <= latest)
      const open = this.#column(setUpHours, 0, 1, true)
      const done = this.#column(0, 0, most)
      const total = this.#column(
        0,
        hoursOf(({ latest }) => latest <= week),
        hoursOf(({ earliest }) => earliest <= week),
      )
      this.#row(0, 0, [[total, 1], [done, -1], ...(week === 0 ? [] : [[totals[week - 1], -1]])])
      if (most > 0)
        this.#row(-Infinity, 0, [
          [done, 1],
          [open, -most],
        ])
      this.#work[week].push([open, setUpHours], [done, 1])
      opens.push(open)
      totals.push(total)
    }
    for (const [earliest, latest] of shortestWindows(visits, weeks))
      this.#row(
        1,
        Infinity,
        opens.slice(earliest, latest + 1).map((open) => [open, 1]),
      )
    if (this.#holdsStretches) this.#addStretches(visits, totals, hoursOf)
  }

  #addStretches(visits, totals, hoursOf) {
    const lasts = [...new Set(visits.map(({ latest }) => latest))]
    for (const first of new Set(visits.map(({ earliest }) => earliest))) {
      for (const last of lasts) {
        const within = hoursOf(({ earliest, latest }) => first <= earliest && latest <= last)
        if (first > 0 && within > 0)
          this.#row(within, Infinity, [
            [totals[last], 1],
            [totals[first - 1], -1],
          ])
      }
    }
  }

  /** Hours above the easy share cost the one price, and hours above the crew's the other. */
  #level(week, hours, { easyShare, fullWeekPrice, overtimePrice }) {
    const full = this.#column(fullWeekPrice, 0, (1 - easyShare) * hours)
    const overtime = this.#column(overtimePrice, 0, Infinity)
    this.#row(-Infinity, easyShare * hours, [...this.#work[week], [full, -1], [overtime, -1]])
  }

  #column(cost, lower, upper, isWhole = false) {
    const { cost: costs, lower: lowers, upper: uppers, isWhole: whole } = this.#columns
    lowers.push(lower)
    uppers.push(upper)
    whole.push(isWhole ? 1 : 0)
    return costs.push(cost) - 1
  }

  #row(lower, upper, terms) {
    const rows = this.#rows
    rows.lower.push(lower)
    rows.upper.push(upper)
    for (const [column, value] of terms) {
      rows.indices.push(column)
      rows.values.push(value)
    }
    rows.starts.push(rows.indices.length)
  }
}

/** Windows that hold no other window: an open week in each of them is one in every window. */
function shortestWindows(visits, weeks) {
  const latest = Array.from({ length: weeks }, () => Infinity)
  for (const visit of visits) latest[visit.earliest] = Math.min(latest[visit.earliest], visit.latest)
  const windows = []
  let least = Infinity
  for (let week = weeks - 1; week >= 0; week -= 1) {
    if (latest[week] >= least) continue
    least = latest[week]
    windows.push([week, least])
  }
  return windows
}
