import type { FieldEvent } from '@glandkeeper/contract/events'
import { useState } from 'react'
import { outbox } from '../../platform/outbox/outbox.ts'
import type { OutboxPhoto } from '../../platform/outbox/entries.ts'
import { useMe } from '../people/index.tsx'

type SaveState = 'typing' | 'saving' | 'saved' | 'failed'

export interface Save {
  readonly state: SaveState
  /** Why this device could not keep it: the page must not be left then. */
  readonly fault: string | null
  /** Saved on this device when it resolves; the server has it when the outbox says so. */
  readonly save: (entries: readonly FieldEvent[], says: string, photos?: readonly PreparedPhoto[]) => Promise<void>
  readonly startAnew: () => void
}

type PreparedPhoto = Pick<OutboxPhoto, 'digest' | 'content' | 'thumbnail'>

/** The one way entries are made: on the disk of this device first, then on their way by themselves. */
export function useSave(tag: string): Save {
  const { personId } = useMe()
  const [{ state, fault }, setStep] = useState<{ state: SaveState; fault: string | null }>({ state: 'typing', fault: null })
  const save: Save['save'] = async (entries, says, photos = []) => {
    setStep({ state: 'saving', fault: null })
    try {
      await outbox.add(
        entries.map((event) => ({ event, personId, tag, says })),
        photos.map((photo) => ({ ...photo, personId, problem: null })),
      )
      setStep({ state: 'saved', fault: null })
    } catch (error) {
      setStep({ state: 'failed', fault: error instanceof Error ? error.message : String(error) })
    }
  }
  return { state, fault, save, startAnew: () => setStep({ state: 'typing', fault: null }) }
}
