// The built-in layouts: whole, told apart, found by id; their ids stand in files that people keep.
import { describe, expect, it } from 'vitest'
import { builtInLayouts, layoutById, withPlugsPerCylinder } from './layouts.ts'
import { layoutSchema } from './layout-schema.ts'

/** Written out, so that renaming one is a decision: jobs, scripts and shops' notes refer to them. */
const ids =
  `single i2-360-12 i2-180-12 i2-270-12 i3-123 i3-132 i4-1342 i4-1243 i4-crossplane-1324 i5-12453 i6-153624
i6-142635 i8-16258374 v2-90-12 v4-60-split-1342 v6-oddeven-123456 v6-oddeven-165432 v6-sequential-142536
v6-sequential-143625 v6-sequential-rear-numbered-162534 v6-90-oddfire-165432 v8-cross-oddeven-18436572
v8-cross-oddeven-18726543 v8-cross-oddeven-18736542 v8-cross-oddeven-12734568 v8-cross-sequential-13726548
v8-cross-sequential-15426378 v8-cross-sequential-15486372 v8-cross-sequential-15487263 v8-flat-sequential-15374826
v8-flat-sequential-15483726 v8-flat-oddeven-14387652 v10-oddeven-1-10-9-4-3-6-5-8-7-2
v10-oddeven-90-shared-1-10-9-4-3-6-5-8-7-2 v10-sequential-1-6-5-10-2-7-3-8-4-9
v12-sequential-1-7-5-11-3-9-6-12-2-8-4-10 v12-sequential-1-12-5-8-3-10-6-7-2-11-4-9 flat2-12 flat4-oddeven-1324
flat4-oddeven-1423 flat4-sequential-1432 flat6-oddeven-163254 flat6-oddeven-145236 flat6-sequential-162435
flat12-1-12-5-8-3-10-6-7-2-11-4-9`.split(/\s+/)

describe('built-in layouts', () => {
  it('keep their ids', () => expect(builtInLayouts.map(layout => layout.id)).toEqual(ids))

  it('have names that differ, and end in the firing order', () => {
    expect(new Set(builtInLayouts.map(layout => layout.name)).size).toBe(builtInLayouts.length)
    for (const layout of builtInLayouts.slice(1))
      expect(layout.name.endsWith(`, ${layout.firingOrder.join('-')}`)).toBe(true)
  })

  it('fit the schema with one plug a cylinder and with two', () => {
    for (const layout of builtInLayouts)
      for (const plugs of [1, 2] as const) {
        const variant = withPlugsPerCylinder(layout, plugs)
        expect(layoutSchema.parse(variant)).toEqual(variant)
      }
  })

  it('say where each order comes from, and which were not checked', () => {
    for (const layout of builtInLayouts)
      expect(layout.source).toMatch(/^(seen in .+|common practice|from memory, unchecked)$/)
  })
})

describe('two plugs a cylinder', () => {
  it('are told by the id and undone exactly', () => {
    for (const layout of builtInLayouts) {
      const twin = withPlugsPerCylinder(layout, 2)
      expect(twin.id).toBe(`${layout.id}-twin`)
      expect(withPlugsPerCylinder(twin, 2)).toBe(twin)
      expect(withPlugsPerCylinder(twin, 1)).toEqual(layout)
      expect(layoutById(twin.id)).toEqual(twin)
    }
  })
})

describe('finding a layout', () => {
  it('takes the full id', () => {
    for (const layout of builtInLayouts) expect(layoutById(layout.id)).toEqual(layout)
  })
  it('takes the engine alone and gives its first order', () => {
    expect(layoutById('i6')?.id).toBe('i6-153624')
    expect(layoutById('v8')?.id).toBe('v8-cross-oddeven-18436572')
    expect(layoutById('v6-sequential')?.id).toBe('v6-sequential-142536')
    expect(layoutById('i4-twin')).toMatchObject({ id: 'i4-1342-twin', plugsPerCylinder: 2 })
  })
  it('knows when there is none', () => {
    for (const id of ['', '-', 'twin', '-twin', 'i7', 'i', 'v8-cross-oddeven-1'])
      expect(layoutById(id)).toBeUndefined()
  })
})
