import look from './pad.module.css'

/** What keeps an entry from being made, over the button that was pressed. */
export function Faults({ faults }: { faults: readonly string[] }) {
  if (faults.length === 0) return null
  return (
    <div role="alert" className={look.note}>
      {faults.map((fault) => (
        <p key={fault}>{fault}</p>
      ))}
    </div>
  )
}
