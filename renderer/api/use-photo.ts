// A photo as a URL the page can show: fetched with the session, kept while it is in use and a while after.
import { useEffect, useState } from 'react'
import type { PhotoKind } from '../../shared/contract/routes.ts'
import { inWords } from './client.ts'
import { useHost } from './host-context.ts'
import { PhotoCache } from './photo-cache.ts'

const cache = new PhotoCache()

export type ShownPhoto = { url: string | undefined; error: string | undefined }

/** Nothing is fetched for undefined. */
export function usePhoto(sha256: string | undefined, kind: PhotoKind): ShownPhoto {
  const host = useHost()
  const key = sha256 === undefined ? undefined : `${sha256} ${kind}`
  const [shown, setShown] = useState<ShownPhoto & { key: string | undefined }>({
    key: undefined,
    url: undefined,
    error: undefined,
  })
  useEffect(() => {
    if (sha256 === undefined || key === undefined) return undefined
    let gone = false
    const load = async () => {
      try {
        const url = await cache.hold(key, signal => host.photo(sha256, kind, signal))
        if (!gone) setShown({ key, url, error: undefined })
      } catch (error) {
        if (!gone) setShown({ key, url: undefined, error: inWords(error) })
      }
    }
    void load()
    return () => {
      gone = true
      cache.release(key)
    }
  }, [host, sha256, kind, key])
  if (shown.key === key) return shown
  // One that is there already shows at once, without an empty frame in between.
  return { url: key === undefined ? undefined : cache.peek(key), error: undefined }
}
