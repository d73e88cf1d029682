export { PhotoStrip } from './photo-strip.tsx'
export { NotAPicture, preparePhoto, type PreparedPhoto } from './prepare-photo.ts'
