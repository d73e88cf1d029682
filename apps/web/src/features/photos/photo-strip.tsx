import { showPhoto, showThumbnail } from '@glandkeeper/contract/photos'
import { useState } from 'react'
import { addressOf } from '../../platform/client.ts'
import look from './photo-strip.module.css'

interface PhotoStripProps {
  digests: readonly string[]
  /** What a picture is of, for who cannot see it; of several each is counted. */
  alt: string
}

/** The photos of one entry, small, each a link to the whole one. */
export function PhotoStrip({ digests, alt }: PhotoStripProps) {
  return (
    <ul className={look.strip}>
      {digests.map((digest, index) => (
        <li key={digest}>
          <Thumbnail digest={digest} alt={digests.length === 1 ? alt : `${alt}, ${index + 1} of ${digests.length}`} />
        </li>
      ))}
    </ul>
  )
}

/** An entry never waits for its photo, so what it names may not be here: that is said, and no broken picture shown. */
function Thumbnail({ digest, alt }: { digest: string; alt: string }) {
  const [isHere, setIsHere] = useState(true)
  const params = { digest }
  if (!isHere)
    return (
      <button type="button" className={look.absent} onClick={() => setIsHere(true)}>
        {alt}: not here yet. Look again
      </button>
    )
  return (
    <a className={look.link} href={addressOf(showPhoto, { params })} target="_blank" rel="noreferrer">
      <img
        className={look.thumbnail}
        src={addressOf(showThumbnail, { params })}
        alt={alt}
        loading="lazy"
        onError={() => setIsHere(false)}
      />
    </a>
  )
}
