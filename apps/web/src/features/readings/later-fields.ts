import { type ComponentType, lazy, useEffect } from 'react'
import { NotLoaded } from './not-loaded.tsx'

/** What is entered seldom comes after the first load. Where it cannot come any more, the rest of the entry goes on. */
function later<Props extends object>(load: () => Promise<ComponentType<Props>>) {
  return lazy(async () => ({ default: await load().catch((): ComponentType<Props> => NotLoaded) }))
}

const packing = async () => (await import('./packing-fields.tsx')).PackingFields
export const loadReelFields = async () => (await import('./reel-fields.tsx')).ReelFields

const sighting = async () => (await import('./more-about-leak.tsx')).MoreAboutLeak
const leakActs = async () => (await import('./leak-act-fields.tsx')).LeakActFields
const entryFields = () => Promise.all([packing(), sighting(), leakActs()])

export const PackingFields = later(packing)
export const ReelFields = later(loadReelFields)
export const MoreAboutLeak = later(sighting)
export const LeakActFields = later(leakActs)

const WHEN_THE_PAGE_IS_THERE_MS = 4000

/** Fetched while there is signal, for when there is none. */
export function useLaterFields(load: () => Promise<unknown> = entryFields): void {
  useEffect(() => {
    const timer = setTimeout(() => void load().catch(() => undefined), WHEN_THE_PAGE_IS_THERE_MS)
    return () => clearTimeout(timer)
  }, [load])
}
