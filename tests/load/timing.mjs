/** Median milliseconds of each work, done by turns so that neither has the warmer machine. */
export async function alternately(times, ...works) {
  const taken = works.map(() => [])
  for (const work of works) await work()
  for (let turn = 0; turn < times; turn += 1) {
    for (const [index, work] of works.entries()) {
      const began = performance.now()
      await work()
      taken[index].push(performance.now() - began)
    }
  }
  return taken.map((values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)])
}
