// Hostile JSON is turned away before any schema sees it.
import { describe, expect, it } from 'vitest'
import { checkShape } from './document-shape.ts'

const nested = (levels: number): unknown => {
  let value: unknown = 1
  for (let i = 0; i < levels; i++) value = [value]
  return value
}

describe('the shape of foreign JSON', () => {
  it('may not carry a __proto__ key, however deep', () => {
    const raw: unknown = JSON.parse('{"pulls":[{"entry":{"__proto__":{"final":1}}}]}')
    expect(checkShape(raw)).toMatchObject({ ok: false, refusal: { where: 'pulls.0.entry.__proto__' } })
    expect(checkShape(JSON.parse('{"__proto__":5}'))).toMatchObject({ ok: false })
    expect(checkShape({ trays: [{ name: '__proto__' }] }).ok).toBe(true)
  })

  it('may not be nested beyond reason, and a very deep one does not exhaust the stack', () => {
    expect(checkShape(nested(32)).ok).toBe(true)
    expect(checkShape(nested(33)).ok).toBe(false)
    expect(checkShape(nested(200_000)).ok).toBe(false)
  })
})
