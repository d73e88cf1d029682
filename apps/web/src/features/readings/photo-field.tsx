import { useState } from 'react'
import { type PreparedPhoto, preparePhoto } from '../photos/index.tsx'
import look from './pad.module.css'

const MOST_PHOTOS = 4

interface PhotoFieldProps {
  photos: readonly PreparedPhoto[]
  onChange: (photos: readonly PreparedPhoto[]) => void
}

/** Pictures of what was found. Made small here; where it was taken goes along only when it is wished. */
export function PhotoField({ photos, onChange }: PhotoFieldProps) {
  const [keepLocation, setKeepLocation] = useState(false)
  const [fault, setFault] = useState<string | null>(null)
  const add = async (file: File) => {
    try {
      const photo = await preparePhoto(file, { keepLocation })
      onChange([...photos.filter(({ digest }) => digest !== photo.digest), photo])
      setFault(null)
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error))
    }
  }
  return (
    <details className={look.more}>
      <summary>{photos.length === 0 ? 'A photo' : photos.length === 1 ? '1 photo' : `${photos.length} photos`}</summary>
      {photos.length < MOST_PHOTOS && (
        <label>
          <span>Photo</span>
          <input
            type="file"
            accept="image/*"
            capture="environment"
            onChange={({ target }) => {
              const [file] = target.files ?? []
              target.value = ''
              if (file) void add(file)
            }}
          />
        </label>
      )}
      <label className={look.tick}>
        <input type="checkbox" checked={keepLocation} onChange={({ target }) => setKeepLocation(target.checked)} />
        <span>Keep in the photo where it was taken</span>
      </label>
      {fault !== null && <p role="alert">Not added: {fault}</p>}
      {photos.length > 0 && (
        <button type="button" onClick={() => onChange([])}>
          Leave {photos.length === 1 ? 'it' : 'them'} out
        </button>
      )}
    </details>
  )
}
