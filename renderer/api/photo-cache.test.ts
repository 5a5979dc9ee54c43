// The photo cache: one load for many, few at a time and newest first, stopped when unwanted, bounded in size.
import { describe, expect, it } from 'vitest'
import { PhotoCache } from './photo-cache.ts'

const limits = { bytes: 100, atOnce: 2 }
const blob = (bytes: number) => new Blob([new Uint8Array(bytes)])

/** A load that waits to be told, and keeps a record of what began and what was stopped. */
function loads() {
  const begun: string[] = []
  const stopped: string[] = []
  const finish = new Map<string, (bytes: number) => void>()
  const load = (key: string) => (signal: AbortSignal) =>
    new Promise<Blob>((resolve, reject) => {
      begun.push(key)
      finish.set(key, bytes => resolve(blob(bytes)))
      signal.addEventListener('abort', () => {
        stopped.push(key)
        reject(signal.reason instanceof Error ? signal.reason : new Error('stopped'))
      })
    })
  return { begun, stopped, finish, load }
}
const settled = () => new Promise(resolve => setTimeout(resolve, 0))
/** Waits for a hold that is expected to be given up. */
const givenUp = (held: Promise<string>) => held.then(() => 'came').catch((error: unknown) => String(error))

describe('the photo cache', () => {
  it('shares one load between holders and keeps the result', async () => {
    const cache = new PhotoCache(limits)
    const { begun, finish, load } = loads()
    const both = [cache.hold('a', load('a')), cache.hold('a', load('a'))]
    await settled()
    finish.get('a')?.(10)
    const urls = await Promise.all(both)
    expect(begun).toEqual(['a'])
    expect(new Set(urls).size).toBe(1)
    expect(cache.peek('a')).toBe(urls[0])
    cache.release('a')
    cache.release('a')
    expect(cache.peek('a')).toBe(urls[0])
  })

  it('fetches few at a time, the newest wish first', async () => {
    const cache = new PhotoCache(limits)
    const { begun, finish, load } = loads()
    const held = ['a', 'b', 'c', 'd'].map(key => cache.hold(key, load(key)))
    await settled()
    expect(begun).toEqual(['a', 'b'])
    finish.get('a')?.(1)
    await settled()
    expect(begun).toEqual(['a', 'b', 'd'])
    for (const key of ['b', 'd']) finish.get(key)?.(1)
    await settled()
    finish.get('c')?.(1)
    await Promise.all(held)
    expect(begun).toEqual(['a', 'b', 'd', 'c'])
  })

  it('stops what nobody wants any more, and can fetch it again', async () => {
    const cache = new PhotoCache(limits)
    const { begun, stopped, finish, load } = loads()
    const first = givenUp(cache.hold('a', load('a')))
    await settled()
    cache.release('a')
    expect(await first).toContain('AbortError')
    expect(stopped).toEqual(['a'])
    const again = cache.hold('a', load('a'))
    await settled()
    finish.get('a')?.(1)
    expect(await again).toBe(cache.peek('a'))
    expect(begun).toEqual(['a', 'a'])
  })

  it('does not begin what was given up while it waited', async () => {
    const cache = new PhotoCache({ ...limits, atOnce: 1 })
    const { begun, finish, load } = loads()
    const first = cache.hold('a', load('a'))
    const second = givenUp(cache.hold('b', load('b')))
    await settled()
    cache.release('b')
    finish.get('a')?.(1)
    await first
    expect(await second).toContain('AbortError')
    expect(begun).toEqual(['a'])
  })

  it('lets the least recently used go beyond its size, never one that is shown', async () => {
    const cache = new PhotoCache(limits)
    const put = (key: string, bytes: number) => cache.hold(key, () => Promise.resolve(blob(bytes)))
    await put('shown', 60)
    await put('old', 30)
    cache.release('old')
    await put('new', 30)
    cache.release('new')
    expect(cache.peek('old')).toBeUndefined()
    expect(cache.peek('shown')).toBeDefined()
    expect(cache.peek('new')).toBeDefined()
  })

  it('does not keep a failure', async () => {
    const cache = new PhotoCache(limits)
    await expect(cache.hold('a', () => Promise.reject(new Error('no such photo')))).rejects.toThrow(
      'no such photo',
    )
    cache.release('a')
    await expect(cache.hold('a', () => Promise.resolve(blob(1)))).resolves.toMatch(/^blob:/)
  })
})
