// From a job to its PDF: gathers the findings, fetches the photos at print size, draws in a worker-friendly pure step.
import type { Settings } from '../../../shared/contract/settings-schema.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { writeUp } from '../../../shared/writeup/findings.ts'
import type { Audience, WriteUpPhoto } from '../../../shared/writeup/write-up.ts'
import { FaultError } from '../fault.ts'
import { sizeOf, printSize } from '../imaging/print-size.ts'
import type { PhotoStore } from '../store/photos.ts'
import { drawPdf, type PrintedPhoto } from './draw-pdf.ts'

export type FinishedPdf = { bytes: Uint8Array; fileName: string }

/** Photos that are missing or damaged are left out and named in the report. */
export async function writeUpPdf(
  job: Job,
  audience: Audience,
  settings: Settings,
  photos: PhotoStore | null,
  at = new Date(),
): Promise<FinishedPdf> {
  const report = writeUp(job, settings.units, audience, settings.shop)
  const printed: PrintedPhoto[] = []
  const missing: WriteUpPhoto[] = []
  for (const photo of report.photos) {
    const jpeg = photos === null ? null : await fetchPhoto(photos, photo.photo)
    if (jpeg) printed.push({ ...photo, ...jpeg })
    else missing.push(photo)
  }
  const bytes = await drawPdf({ report, photos: printed, missing, paper: settings.paper, at })
  return { bytes, fileName: `${fileStem(job)}-${audience}.pdf` }
}

async function fetchPhoto(
  photos: PhotoStore,
  sha256: string,
): Promise<{ jpeg: Uint8Array; width: number; height: number } | null> {
  try {
    const picture = await photos.derived(sha256, 'screen')
    const jpeg = await printSize(picture)
    return { jpeg, ...(await sizeOf(jpeg)) }
  } catch (error) {
    if (error instanceof FaultError) return null
    throw error
  }
}

/** A file name every system takes. */
function fileStem(job: Job): string {
  const words = job.engine.vehicle
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40)
  return `${job.createdAt.slice(0, 10)}-${words || 'engine'}`.toLowerCase()
}
