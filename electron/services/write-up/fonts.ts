// The report's typefaces: DejaVu (free licence, ships in its package), since it has Δ ≈ µ ° Ž ● ▲ ½ in one file.
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'

const resolve = createRequire(import.meta.url).resolve

const files = {
  regular: 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
  bold: 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf',
  oblique: 'dejavu-fonts-ttf/ttf/DejaVuSans-Oblique.ttf',
} as const

export type Face = keyof typeof files

const loaded = new Map<Face, Buffer>()

/** Bytes of a face, read once; the PDF embeds only the glyphs it uses. */
export function faceBytes(face: Face): Buffer {
  const known = loaded.get(face)
  if (known) return known
  const bytes = readFileSync(resolve(files[face]))
  loaded.set(face, bytes)
  return bytes
}
