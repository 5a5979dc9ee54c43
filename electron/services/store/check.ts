// Verifies a catalogue: every document, every photo, the index. It can rebuild what is derived; evidence it never touches.
import type { CheckReport } from '../../../shared/contract/task-schema.ts'
import { FaultError } from '../fault.ts'
import { checkDocuments } from './check-documents.ts'
import { checkIndex } from './check-index.ts'
import { type CheckOptions, startChecking } from './checking.ts'
import { checkJobs } from './check-jobs.ts'
import { checkPhotos } from './check-photos.ts'
import { checkRecordings } from './check-recordings.ts'
import { realDisk } from './disk.ts'
import { onDisk } from './disk-fault.ts'
import { mendDerived } from './mend-derived.ts'

export type { CheckOptions }

/** Throws NOT_FOUND where there is no catalogue, DISK, and the signal's reason when it was cancelled. */
export async function checkCatalogue(folder: string, options: CheckOptions): Promise<CheckReport> {
  const disk = options.disk ?? realDisk
  return onDisk('the catalogue folder', async () => {
    const { checking, counts, expect, finish } = startChecking(folder, disk, options)
    if (!(await disk.isFolder(checking.at('jobs'))))
      throw new FaultError('NOT_FOUND', {
        what: 'There is no catalogue here.',
        where: 'the catalogue folder',
        hint: 'Name the folder that holds jobs/ and photos/.',
      })
    const jobFolders = { jobs: await checking.names('jobs'), trash: await checking.names('trash') }
    const photoFolders = await checking.names('photos')
    expect(jobFolders.jobs.length + jobFolders.trash.length + photoFolders.length)

    await checkDocuments(checking)
    const jobs = await checkJobs(checking, jobFolders)
    const photos = await checkPhotos(checking, photoFolders, jobs)
    const recordings = await checkRecordings(checking, jobs)
    await checkIndex(checking, jobs)
    if (options.mend) await mendDerived(checking, folder, photos)
    counts.jobs = jobs.ids.size
    counts.photos = photos.names.size
    return { ...counts, ...(recordings > 0 ? { recordings } : {}), problems: await finish() }
  })
}
