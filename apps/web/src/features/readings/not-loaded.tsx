/** In the place of fields that this device never loaded and cannot load now. */
export function NotLoaded() {
  return (
    <p role="status" className="soft">
      The fields of this part are not on this device and there is no signal. What is said without them is saved all the same.
    </p>
  )
}
