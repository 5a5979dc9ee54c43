// Settings and own layouts: kept, verified, and never overwritten where they cannot be read.
import { describe, expect, it } from 'vitest'
import { defaultSettings } from '../../../shared/contract/settings-schema.ts'
import { fourInLine } from '../../../shared/job/testing/example-job.ts'
import { faultOf } from '../../../tests/faults/storage/example.ts'
import { SimulatedDisk } from '../../../tests/faults/storage/simulated-disk.ts'
import { sealed } from './content-hash.ts'
import { createDoubts } from './doubts.ts'
import { replaceFile } from './durable-file.ts'
import { openOwnLayouts, openSettings } from './small-documents.ts'

function begin() {
  const { disk } = new SimulatedDisk()
  return { disk, folder: '/', writable: async () => {}, doubts: createDoubts() }
}
const newer = Buffer.from(JSON.stringify(sealed({ schemaVersion: 2, rev: 1, value: { new: 'shape' } })))

describe('settings', () => {
  it('begin with the defaults, count their revisions and stay', async () => {
    const place = begin()
    const settings = await openSettings(place)
    expect([settings.get(), settings.problem]).toEqual([defaultSettings, null])
    await settings.set({ ...defaultSettings, technician: 'Ana' })
    await settings.set({ ...defaultSettings, technician: 'Ben' })
    expect((await openSettings(place)).get().technician).toBe('Ben')
    const stored: unknown = JSON.parse((await place.disk.read('/settings.json')).toString())
    expect(stored).toMatchObject({ schemaVersion: 1, rev: 2, value: { technician: 'Ben' } })
  })

  it('changed many times at once end as the last one asked for', async () => {
    const place = begin()
    const slow = () => new Promise<void>(resolve => setTimeout(resolve, Math.random() * 3))
    const settings = await openSettings({ ...place, writable: slow })
    await Promise.all(
      Array.from({ length: 40 }, (_, n) => settings.set({ ...defaultSettings, technician: `person ${n}` })),
    )
    expect(settings.get().technician).toBe('person 39')
    expect((await openSettings(place)).get().technician).toBe('person 39')
  })

  it('that are damaged give way to the defaults, and are kept aside when they are set anew', async () => {
    const place = begin()
    await replaceFile(place.disk, '/settings.json', Buffer.from('torn {'))
    const settings = await openSettings(place)
    expect([settings.get(), settings.problem?.code, settings.problem?.fault.where]).toEqual([
      defaultSettings,
      'DAMAGED',
      'settings.json',
    ])
    expect((await place.disk.read('/settings.json')).toString()).toBe('torn {')
    await settings.set({ ...defaultSettings, shop: 'Example shop' })
    expect(settings.problem).toBeNull()
    const [kept] = await place.disk.list('/damaged')
    expect((await place.disk.read(`/damaged/${kept}`)).toString()).toBe('torn {')
    expect((await openSettings(place)).get().shop).toBe('Example shop')
  })

  it('of a newer version are not touched', async () => {
    const place = begin()
    await replaceFile(place.disk, '/settings.json', newer)
    const settings = await openSettings(place)
    expect(settings.get()).toEqual(defaultSettings)
    expect((await faultOf(() => settings.set(defaultSettings)))?.code).toBe('NEWER_VERSION')
    expect(await place.disk.read('/settings.json')).toEqual(newer)
  })
})

describe('own layouts', () => {
  it('stay', async () => {
    const place = begin()
    expect((await openOwnLayouts(place)).get()).toEqual([])
    await (await openOwnLayouts(place)).set([fourInLine])
    expect((await openOwnLayouts(place)).get()).toEqual([fourInLine])
  })

  it.each([
    ['DAMAGED', Buffer.from('')],
    ['NEWER_VERSION', newer],
  ])('that cannot be read (%s) are neither empty nor overwritten', async (code, bytes) => {
    const place = begin()
    await replaceFile(place.disk, '/layouts.json', bytes)
    const layouts = await openOwnLayouts(place)
    expect(() => layouts.get()).toThrow(expect.objectContaining({ code }))
    expect((await faultOf(() => layouts.set([fourInLine])))?.code).toBe(code)
    expect(await place.disk.read('/layouts.json')).toEqual(bytes)
  })
})
