import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import wasmAddress from 'zxing-wasm/reader/zxing_reader.wasm?url'

// The reader comes with the page, and so works without signal.
prepareZXingModule({ overrides: { locateFile: () => wasmAddress } })

/** The text of the first QR code in a picture; null where there is none. */
export async function readCode(picture: ImageData | Blob): Promise<string | null> {
  const found = await readBarcodes(picture, { formats: ['QRCode'], tryHarder: true, maxNumberOfSymbols: 1 })
  return found.find(({ isValid }) => isValid)?.text ?? null
}
