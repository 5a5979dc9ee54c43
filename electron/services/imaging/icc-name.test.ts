import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { displayP3Profile } from './cicp.ts'
import { iccName, unreadableProfile } from './icc-name.ts'

/** A profile that holds nothing but its description. */
function profile(description: Buffer): Buffer {
  const head = Buffer.alloc(144)
  head.write('acsp', 36, 'latin1')
  head.writeUInt32BE(1, 128)
  head.write('desc', 132, 'latin1')
  head.writeUInt32BE(144, 136)
  head.writeUInt32BE(description.length, 140)
  return Buffer.concat([head, description])
}

function version2(name: string): Buffer {
  const text = Buffer.from(`${name}\0`, 'latin1')
  const size = Buffer.alloc(12)
  size.write('desc', 0, 'latin1')
  size.writeUInt32BE(text.length, 8)
  return profile(Buffer.concat([size, text]))
}

function version4(name: string): Buffer {
  const text = Buffer.from(name, 'utf16le').swap16()
  const record = Buffer.alloc(28)
  record.write('mluc', 0, 'latin1')
  record.writeUInt32BE(1, 8)
  record.writeUInt32BE(12, 12)
  record.write('enUS', 16, 'latin1')
  record.writeUInt32BE(text.length, 20)
  record.writeUInt32BE(28, 24)
  return profile(Buffer.concat([record, text]))
}

describe('the name of a profile', () => {
  it('is read from both versions of the description', async () => {
    expect(iccName(version2('Display P3'))).toBe('Display P3')
    expect(iccName(version4('Display P3'))).toBe('Display P3')
    expect(iccName(version4('Über RGB'))).toBe('Über RGB')
    expect(iccName(await displayP3Profile())).toMatch(/p3/i)
  })

  it('holds nothing invisible and is bounded', () => {
    expect(iccName(version4('P3\u202Etxt\u0007'))).toBe('P3txt')
    expect(iccName(version4('x'.repeat(400))).length).toBeLessThanOrEqual(120)
    expect(iccName(version4('\u{1F600}'.repeat(200))).length).toBeLessThanOrEqual(120)
  })

  it('is said to be unreadable for garbage, never thrown', () => {
    expect(iccName(new Uint8Array())).toBe(unreadableProfile)
    expect(iccName(version2('\u0001'))).toBe(unreadableProfile)
    const good = version4('Display P3')
    fc.assert(
      fc.property(
        fc.nat(good.length),
        fc.array(fc.tuple(fc.nat(171), fc.nat(255)), { maxLength: 20 }),
        (cut, changes) => {
          const bytes = Uint8Array.from(good.subarray(0, cut))
          for (const [at, value] of changes) if (at < bytes.length) bytes[at] = value
          const name = iccName(bytes)
          expect(name.length).toBeGreaterThan(0)
          expect(name.length).toBeLessThanOrEqual(120)
        },
      ),
      { numRuns: 2000 },
    )
  })
})
