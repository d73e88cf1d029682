/** What whoever handles, chooses or cuts out a kind of packing must know first. */
export type Caution =
  | 'dust'
  | 'lead'
  | 'asbestos suspect'
  | 'corrodes stainless steel'
  | 'oxidising fluids'
  | 'no smoking or hot work'
  | 'wire scores stems'
  | 'wears stems'

/**
 * Each caution as a sentence for the page and the card.
 *
 * @source SRC-609 cautions of handling (docs/sources.md)
 */
export const cautionSentences: Readonly<Record<Caution, string>> = {
  dust: 'Cutting and digging out make dust: damp it down, do not sweep it dry or blow it about.',
  lead: 'It holds lead: gloves, no food or smoking at the work, wash after, and keep the waste apart.',
  'asbestos suspect':
    'Old packing that looks like this may hold asbestos: presume so until it is known not to, and let the site procedure for asbestos decide before it is touched.',
  'corrodes stainless steel':
    'Graphite and carbon can pit a stainless stem where it stands wet, worst with chlorides: take low-chloride stock, and do not leave a wet gland standing.',
  'oxidising fluids': 'Strong oxidising fluids attack it, and may set it alight.',
  'no smoking or hot work': 'No smoking and no hot work near scraps of it: the fume of hot PTFE is poisonous.',
  'wire scores stems': 'Wire ends score a stem: cut clean, tuck the ends in, and keep it off soft stems.',
  'wears stems': 'The yarn wears soft stems and sleeves: look at the surface at each repack.',
}
