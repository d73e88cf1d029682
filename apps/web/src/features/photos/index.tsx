export { PhotoStrip } from './photo-strip.tsx'
export { preparePhoto, type PreparedPhoto } from './prepare-photo.ts'
