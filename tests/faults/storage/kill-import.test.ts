// A host that is killed in the middle of an import: what was acknowledged is whole, what was not is not there at all,
// and no job shows a photo that is missing or damaged.
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { shotsOf } from '../../../shared/job/current.ts'
import { type Bundle, bundleChild, startChild } from './bundle-child.ts'
import { isLong, open } from './example.ts'

const rounds = isLong ? 200 : 10
const photoCount = 8
let bundle: Bundle
let folder = ''

beforeAll(async () => {
  bundle = await bundleChild('import-photos')
  folder = await mkdtemp(join(tmpdir(), 'plugtray-kill-import-'))
})
afterAll(async () => {
  bundle.remove()
  await rm(folder, { recursive: true, force: true })
})

/** Photos of this round alone, so that every import writes new originals. */
async function photosFor(round: number): Promise<string> {
  const place = join(folder, `photos-${round}`)
  await mkdir(place)
  for (let i = 0; i < photoCount; i += 1) {
    const background = { r: (round * 7) % 256, g: i * 30, b: Math.floor(round / 36) }
    const jpeg = await sharp({ create: { width: 400, height: 300, channels: 3, background } })
      .jpeg()
      .toBuffer()
    await writeFile(
      join(place, `IMG_${i}.jpg`),
      Buffer.concat([jpeg, Buffer.from(`round ${round} photo ${i}`)]),
    )
  }
  return place
}

it('keeps whole imports and nothing of a broken one', async () => {
  const catalogueFolder = join(folder, 'catalogue')
  const wrong: string[] = []
  let acknowledged = 0
  let broken = 0
  for (let round = 0; round < rounds; round += 1) {
    const photos = await photosFor(round)
    const child = startChild(bundle, catalogueFolder, photos, String(round * 1000))
    expect(await child.line()).toBe('ready')
    const done = new Set<string>()
    const begun = new Set<string>()
    for (let line = await child.line(); line !== null; line = await child.line()) {
      const [word, id] = line.split(' ')
      if (word === 'done' && id) done.add(id)
      if (word === 'begin' && id) {
        begun.add(id)
        // In even rounds the first import is hit, in odd ones a later one.
        if (begun.size > (round % 2) * 2) setTimeout(() => child.process.kill('SIGKILL'), Math.random() * 60)
      }
    }
    await child.ended
    acknowledged += done.size

    const catalogue = await open(catalogueFolder)
    expect(catalogue.readOnly).toBeNull()
    for (const id of begun) {
      const count = shotsOf(await catalogue.load(id)).length
      if (done.has(id) && count !== photoCount)
        wrong.push(`round ${round}: ${id} was acknowledged and has ${count} photos`)
      if (count !== 0 && count !== photoCount)
        wrong.push(`round ${round}: ${id} has ${count} photos, half an import`)
      if (count === 0) broken += 1
    }
    const { problems } = await catalogue.check({ mend: false })
    // Photos of the broken import are stored but shown by no job: that is allowed, and said.
    wrong.push(
      ...problems
        .filter(one => one.kind !== 'not named by any job' && one.kind !== 'left-over')
        .map(one => `round ${round}: ${one.file} is ${one.kind}`),
    )
    await catalogue.photos.close()
    await catalogue.close()
  }
  console.log(
    `kill -9 during import: ${rounds} rounds, ${acknowledged} imports acknowledged, ${broken} broken ones left nothing, ${wrong.length} wrong`,
  )
  expect(wrong).toEqual([])
  expect(broken).toBeGreaterThan(0)
})
