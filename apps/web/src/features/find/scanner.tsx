import { useEffect, useRef, useState } from 'react'
import { readCode } from './read-code.ts'
import look from './find.module.css'

const LOOKS_EVERY = 180
/** A label fills a good part of the picture: more pixels only cost time. */
const WIDEST = 720

/** The camera until a code is in its sight. Needs a secure page; a picture of the label can be chosen anywhere. */
export function Scanner({ onCode }: { onCode: (text: string) => void }) {
  const video = useRef<HTMLVideoElement>(null)
  const [fault, setFault] = useState<string | null>(null)
  useEffect(() => {
    const seen = video.current
    if (!seen) return undefined
    const stop = new AbortController()
    watch(seen, stop.signal).then(
      (text) => text !== null && onCode(text),
      (error: unknown) => stop.signal.aborted || setFault(faultInWords(error)),
    )
    return () => stop.abort()
  }, [onCode])
  return (
    <div className={look.scanner}>
      {fault === null ? <video ref={video} muted playsInline aria-label="What the camera sees" /> : <p role="alert">{fault}</p>}
      <label className={look.picture}>
        Or choose a picture of the label
        <input
          type="file"
          accept="image/*"
          onChange={({ target }) => {
            const [file] = target.files ?? []
            if (file)
              void readCode(file).then((text) => (text === null ? setFault('No code was found in this picture.') : onCode(text)))
          }}
        />
      </label>
    </div>
  )
}

async function watch(video: HTMLVideoElement, signal: AbortSignal): Promise<string | null> {
  if (!('mediaDevices' in navigator)) throw new Error('not a secure page')
  const stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } })
  const close = () => stream.getTracks().forEach((track) => track.stop())
  if (signal.aborted) {
    close()
    return null
  }
  signal.addEventListener('abort', close)
  video.srcObject = stream
  await video.play()
  const canvas = document.createElement('canvas')
  const pen = canvas.getContext('2d', { willReadFrequently: true })
  if (!pen) throw new Error('no canvas')
  while (!signal.aborted) {
    const scale = Math.min(1, WIDEST / Math.max(video.videoWidth, 1))
    canvas.width = Math.max(1, Math.round(video.videoWidth * scale))
    canvas.height = Math.max(1, Math.round(video.videoHeight * scale))
    pen.drawImage(video, 0, 0, canvas.width, canvas.height)
    const text = await readCode(pen.getImageData(0, 0, canvas.width, canvas.height))
    if (text !== null) {
      close()
      return text
    }
    await new Promise((resolve) => setTimeout(resolve, LOOKS_EVERY))
  }
  return null
}

function faultInWords(error: unknown): string {
  const name = error instanceof DOMException ? error.name : ''
  if (name === 'NotAllowedError') return 'The camera may not be used: allow it for this page, or type the tag.'
  if (name === 'NotFoundError') return 'This device has no camera that can be used here: type the tag.'
  return 'The camera cannot be opened; it needs a secure page (https). Type the tag, or choose a picture.'
}
