import { useState } from 'react'
import { ProblemError } from '../../platform/client.ts'
import { type OutboxPhoto, sendPhotoAgain, settlePhoto } from '../../platform/outbox/entries.ts'
import { outbox } from '../../platform/outbox/outbox.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { handOver } from './unsent-file.ts'
import look from './waiting.module.css'

/** Photos that are still on this device: on their way after their entries, or refused and waiting for a person. */
export function Photos({ photos }: { photos: readonly OutboxPhoto[] }) {
  const refused = photos.filter(({ problem }) => problem !== null)
  const waiting = photos.length - refused.length
  return (
    <>
      {waiting > 0 && (
        <p>
          {waiting} {waiting === 1 ? 'photo follows its entry' : 'photos follow their entries'}.
        </p>
      )}
      {refused.length > 0 && (
        <section>
          <h2>Refused photos: these need you</h2>
          <ul className={look.list}>
            {refused.map((photo) => (
              <RefusedPhoto key={photo.digest} photo={photo} />
            ))}
          </ul>
        </section>
      )}
    </>
  )
}

function RefusedPhoto({ photo }: { photo: OutboxPhoto }) {
  const [isDownloaded, setIsDownloaded] = useState(false)
  const { digest, problem } = photo
  return (
    <li>
      <img src={addressOf(photo.thumbnail)} alt="As it was taken at the valve" className={look.thumbnail} />
      {problem && <ProblemNote error={new ProblemError(problem)} />}
      <div className={look.acts}>
        <button type="button" onClick={() => void outbox.change((database) => sendPhotoAgain(database, photo))}>
          Send it again
        </button>
        <button
          type="button"
          onClick={() => {
            handOver(new Blob([photo.content], { type: 'image/jpeg' }), `photo-${digest.slice(0, 12)}.jpg`)
            setIsDownloaded(true)
          }}
        >
          Download it
        </button>
        {isDownloaded && (
          <button type="button" onClick={() => void outbox.change((database) => settlePhoto(database, photo, null))}>
            Set it aside: take it off this device
          </button>
        )}
      </div>
    </li>
  )
}

/** In the page itself: it may show no pictures but the server's and its own. */
function addressOf(picture: Uint8Array): string {
  return `data:image/jpeg;base64,${btoa(Array.from(picture, (byte) => String.fromCodePoint(byte)).join(''))}`
}
