// Verifies the original photos of a catalogue: each against its name, and all against what the jobs show.
import type { Checking } from './checking.ts'
import type { CheckedJobs } from './check-jobs.ts'
import { isLeftOver } from './durable-file.ts'
import { sha256Of } from './verified-write.ts'

export type CheckedPhotos = {
  /** Name of each photo that is there, by SHA-256. */
  names: Map<string, string>
  /** SHA-256 of those whose bytes are right. */
  whole: Set<string>
}

const photoFile = /^([0-9a-f]{64})\.(jpg|png|webp|avif|tif|heic)$/

export async function checkPhotos(
  checking: Checking,
  folders: readonly string[],
  jobs: CheckedJobs,
): Promise<CheckedPhotos> {
  const found: CheckedPhotos = { names: new Map(), whole: new Set() }
  for (const part of folders) {
    const place = `photos/${part}`
    if (isLeftOver(part)) checking.sayLeftOver(place)
    else if (!/^[0-9a-f]{2}$/.test(part) || !(await checking.disk.isFolder(checking.at(place))))
      checking.foreign(place)
    else
      for (const file of await checking.names(place)) {
        checking.pause()
        const sha256 = photoFile.exec(file)?.[1]
        if (!sha256?.startsWith(part)) checking.foreign(`${place}/${file}`)
        else await checkPhoto(checking, `${place}/${file}`, sha256, jobs, found)
      }
    checking.step(place)
  }
  for (const [photo, job] of jobs.shown)
    if (!found.names.has(photo))
      checking.say(
        `photos/${photo.slice(0, 2)}/${photo}`,
        'missing',
        `A photo is not there that ${job} shows.`,
        'Restore the file from a backup, or add the photo to the job again.',
      )
  return found
}

async function checkPhoto(
  checking: Checking,
  name: string,
  sha256: string,
  { shown, shownBefore }: CheckedJobs,
  found: CheckedPhotos,
): Promise<void> {
  found.names.set(sha256, name)
  const bytes = await checking.read(name)
  if (!bytes) return
  if (sha256Of(bytes) === sha256) found.whole.add(sha256)
  else
    checking.say(
      name,
      'damaged',
      'The photo does not match its hash.',
      'Add the same photo again, or restore the file from a backup.',
    )
  if (!shown.has(sha256) && !shownBefore.has(sha256))
    checking.say(
      name,
      'not named by any job',
      'No job shows this photo (its import was cancelled or is under way, or it was taken out).',
      'It can be deleted.',
    )
}
