import look from './pad.module.css'

/** This device would not keep the entry: a full disk, or a browser that keeps nothing. It is still on the page. */
export function NotSaved({ fault, onAgain }: { fault: string; onAgain: () => void }) {
  return (
    <>
      <p role="alert" className={look.note}>
        <b>Not saved.</b> This device keeps nothing at the moment ({fault}). Stay on this page, make room on the device, and save
        again; or write it on paper.
      </p>
      <button type="button" className={`main ${look.main}`} onClick={onAgain}>
        Save again
        <small>the same entry: it cannot be doubled</small>
      </button>
    </>
  )
}
