import { z } from 'zod'

/** Cut from cord, or pressed to size. By itself: a phone reads it with every card, and the settings of packings never. */
export const FamilyForm = z.enum(['braided', 'die-formed'])
