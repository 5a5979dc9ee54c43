// Verifies the small documents of a catalogue and looks for what does not belong into its folder.
import type { z } from 'zod'
import { markerName, markerSchema } from './catalogue-marker.ts'
import type { Checking } from './checking.ts'
import { isOfLock, lockName } from './lock.ts'
import { ownLayoutsKind, readSmallDocument, settingsKind } from './small-documents.ts'

const folders = [
  'jobs',
  'index',
  'trash',
  'photos',
  'derived',
  'recordings',
  'damaged',
  'incoming',
  'specimens',
]
const documents: { name: string; schema: z.ZodType }[] = [
  { name: markerName, schema: markerSchema },
  settingsKind,
  ownLayoutsKind,
]

export async function checkDocuments(checking: Checking): Promise<void> {
  const names = await checking.names('.')
  for (const { name, schema } of documents) {
    if (!names.includes(name)) continue
    const bytes = await checking.read(name)
    try {
      if (bytes) readSmallDocument(bytes, name, schema)
    } catch (error) {
      checking.sayFault(name, error)
    }
  }
  if (!names.includes(markerName))
    checking.say(
      markerName,
      'missing',
      'The catalogue does not say of which version it is.',
      'It is written again at the next start.',
    )
  const known = new Set([...folders, ...documents.map(({ name }) => name), lockName])
  for (const name of names)
    if (isOfLock(name)) checking.sayLeftOver(name)
    else if (!known.has(name)) checking.foreign(name)
}
