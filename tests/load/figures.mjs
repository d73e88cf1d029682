/** Processor time of this process: what another process takes on the same core does not count. */
export function timed(work) {
  const began = process.cpuUsage()
  const result = work()
  return { result, seconds: process.cpuUsage(began).user / 1e6 }
}

export function percent(share) {
  return `${(share * 100).toFixed(1)} %`
}
