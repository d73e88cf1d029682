import { v7 } from 'uuid'

/** Ids are made where the thing happens. Not `crypto.randomUUID`: it is missing on a plain http address. */
export function newId(): string {
  return v7()
}

/**
 * What this device calls itself in the record, with the version of the program it ran. Kept per browser, so that
 * entries of one phone can be told apart.
 */
export function deviceName(): string {
  return `${localStorage.getItem('device') || nameDevice()}, ${import.meta.env.GLANDKEEPER_VERSION ?? 'unbuilt'}`
}

function nameDevice(): string {
  const made = `browser ${v7().slice(-6)}`
  localStorage.setItem('device', made)
  return made
}
