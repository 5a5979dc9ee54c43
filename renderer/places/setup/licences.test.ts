// The notice names every package that the app ships with, under the licence that the package itself declares.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { licences } from './licences.ts'

const root = join(import.meta.dirname, '../../..')
const read = (path: string): unknown => JSON.parse(readFileSync(join(root, path), 'utf8'))
const field = (document: unknown, name: string): unknown =>
  typeof document === 'object' && document !== null && name in document
    ? Object.entries(document).find(([key]) => key === name)?.[1]
    : undefined

/** What the page bundles, from the packages that are otherwise needed for building and testing only. */
const bundled = [
  'electron',
  'react',
  'react-dom',
  'react-aria-components',
  '@tanstack/react-query',
  '@tanstack/react-virtual',
  'wouter',
  'lucide-react',
]

it('names every dependency', () => {
  const dependencies = Object.keys(field(read('package.json'), 'dependencies') ?? {})
  expect(dependencies.length).toBeGreaterThan(5)
  expect(licences.map(one => one.name).toSorted()).toEqual([...dependencies, ...bundled].toSorted())
})

it.each(licences)('says of $name what its package says', ({ name, licence }) => {
  expect(field(read(`node_modules/${name}/package.json`), 'license')).toBe(licence)
})
