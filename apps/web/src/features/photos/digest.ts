import { sha256 } from '@noble/hashes/sha2'
import { bytesToHex } from '@noble/hashes/utils'

/**
 * SHA-256 in hex: the name of a photo wherever it goes. By a library and not by the browser, which keeps its own for
 * secure pages, while plain http is usual on a plant's own network; a photo takes it some hundredths of a second.
 */
export function digestOf(content: Uint8Array): string {
  return bytesToHex(sha256(content))
}
