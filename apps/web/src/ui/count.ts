const figures = new Intl.NumberFormat('en-GB')

/** With thousands apart and a true minus sign. @example formatCount(12500) // → '12,500' */
export function formatCount(count: number): string {
  return figures.format(count).replace('-', '−')
}

/** @example counted(1, 'valve') // → '1 valve' */
export function counted(count: number, thing: string, things = `${thing}s`): string {
  return `${formatCount(count)} ${count === 1 ? thing : things}`
}
