import { ProblemNote } from '../../ui/problem-note.tsx'
import css from './evidence.module.css'
import { useCancelProof, useProveChain } from './queries.ts'

/** The button; while the chain is walked how far that is, with a way to stop it. */
export function Proving({ share }: { share: number | null }) {
  const proving = useProveChain()
  const cancelling = useCancelProof()
  const error = proving.error ?? cancelling.error
  return (
    <>
      {share === null ? (
        <button type="button" className="main" disabled={proving.isPending} onClick={() => proving.mutate()}>
          Prove the record now
        </button>
      ) : (
        <div className={css.progress}>
          <span role="status">Proving the record</span>
          <progress value={share} aria-label="Proving the record" />
          <span className={css.share} aria-hidden="true">
            {Math.floor(share * 100)}&nbsp;%
          </span>
          <button type="button" disabled={cancelling.isPending} onClick={() => cancelling.mutate()}>
            Stop
          </button>
        </div>
      )}
      {error && <ProblemNote error={error} />}
    </>
  )
}
