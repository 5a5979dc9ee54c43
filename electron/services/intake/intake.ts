// Takes photo files into the store in the order given: each is opened, checked, hashed, decoded and stored, or refused
// with one line, and none of it is part of the job until the caller adds the shots that come back.
import type { FileOutcome } from '../../../shared/contract/task-schema.ts'
import { shotsOf } from '../../../shared/job/current.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import type { Shot } from '../../../shared/job/tray-schema.ts'
import type { ShotKind } from '../../../shared/plug/condition.ts'
import type { PictureHeader } from '../imaging/picture-header.ts'
import { RefusedPicture } from '../imaging/refused-picture.ts'
import type { PhotoStore } from '../store/photos.ts'
import { inOrder } from './in-order.ts'
import { openFile } from './open-file.ts'
import { RefusedFile } from './refused-file.ts'
import { shownName } from './shown-name.ts'

export type TakeIn = {
  files: readonly { path: string; name: string }[]
  /** Photos it already has are reported as duplicates. */
  job: Job
  photos: PhotoStore
  newId: () => string
  /** ISO 8601 time. */
  now: () => string
  kind?: ShotKind
}

export type TakeInOptions = {
  signal?: AbortSignal | undefined
  onProgress?: (progress: { done: number; total: number; what: string }) => void
}

/** `outcomes` has one entry a file, in the order of the files; `shots` those that were added, in the same order. */
export type TakenIn = { shots: Shot[]; outcomes: FileOutcome[] }

type Photo = { sha256: string; bytes: number; header: PictureHeader }
type Result = { photo: Photo } | { refused: string }

/** The photo is durable when this returns; refused photos leave nothing behind. */
async function store(
  photos: PhotoStore,
  bytes: Uint8Array,
  sha256: string,
  signal: AbortSignal,
): Promise<Photo> {
  const header = await photos.imaging.header(bytes)
  if (!(await photos.hasSizes(sha256))) {
    const sizes = await photos.imaging.sizes(bytes, header, { signal })
    await photos.put(bytes, sha256, header.format)
    await photos.putSizes(sha256, sizes)
  } else {
    await photos.put(bytes, sha256, header.format)
  }
  return { sha256, bytes: bytes.length, header }
}

function shotOf({ sha256, bytes, header }: Photo, fileName: string, { newId, now, kind }: TakeIn): Shot {
  return {
    id: newId(),
    photo: sha256,
    format: header.format,
    fileName,
    bytes,
    width: header.width,
    height: header.height,
    ...(header.profile === undefined ? {} : { profile: header.profile }),
    ...(header.takenAt === undefined ? {} : { takenAt: header.takenAt }),
    addedAt: now(),
    kind: kind ?? 'end-on',
  }
}

/** First come, first added: the same bytes later in the list, or in the job already, are duplicates. */
function settle(results: readonly Result[], request: TakeIn): TakenIn {
  const names = new Map(shotsOf(request.job).map(shot => [shot.photo, shot.fileName]))
  const shots: Shot[] = []
  const outcomes = results.map((result, i): FileOutcome => {
    const file = shownName(request.files[i]?.name ?? '')
    if ('refused' in result) return { outcome: 'refused', file, why: result.refused }
    const photo = result.photo.sha256
    const of = names.get(photo)
    if (of !== undefined) return { outcome: 'duplicate', file, photo, of }
    names.set(photo, file)
    shots.push(shotOf(result.photo, file, request))
    return { outcome: 'added', file, photo }
  })
  return { shots, outcomes }
}

/**
 * Works on a few files at once and answers in the order of `files`. A bad file is one line in `outcomes`. Rejects with
 * the signal's reason when cancelled and with FaultError when the store cannot be written: then no shot is handed
 * out, and photos stored so far are named by no job, so that a check of the catalogue may clear them away.
 */
export async function takeIn(request: TakeIn, { signal, onProgress }: TakeInOptions = {}): Promise<TakenIn> {
  const { files, photos } = request
  const underWay = new Map<string, Promise<Photo>>()
  let done = 0

  async function takeOne(file: { path: string; name: string }, stop: AbortSignal): Promise<Result> {
    try {
      const { bytes, sha256 } = await openFile(file.path, stop)
      // The same bytes twice in one import are decoded and stored once.
      const photo = underWay.get(sha256) ?? store(photos, bytes, sha256, stop)
      underWay.set(sha256, photo)
      return { photo: await photo }
    } catch (error) {
      if (error instanceof RefusedFile || error instanceof RefusedPicture) return { refused: error.why }
      throw error
    }
  }

  const results = await inOrder(files, photos.imaging.parallel + 1, signal, async (file, stop) => {
    const result = await takeOne(file, stop)
    done++
    onProgress?.({ done, total: files.length, what: shownName(file.name) })
    return result
  })
  return settle(results, request)
}
