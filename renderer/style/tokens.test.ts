// The colours keep what is asked of them: neutral surfaces, WCAG 2.2 contrast (1.4.3, 1.4.11), one monotone state ramp.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

type Colour = [red: number, green: number, blue: number]
type Theme = 'light' | 'dark'

const css = readFileSync(join(import.meta.dirname, 'tokens.css'), 'utf8')
const tokens = new Map(
  [...css.matchAll(/--([a-z-]+): light-dark\(#([0-9a-f]{6}), #([0-9a-f]{6})\)/g)].map(
    ([, name, light, dark]) => [name ?? '', { light: parse(light ?? ''), dark: parse(dark ?? '') }],
  ),
)

function parse(hex: string): Colour {
  const part = (at: number) => Number.parseInt(hex.slice(at, at + 2), 16)
  return [part(0), part(2), part(4)]
}

const colour = (name: string, theme: Theme): Colour => {
  const found = tokens.get(name)
  if (!found) throw new Error(`no colour --${name} in tokens.css`)
  return found[theme]
}

/** Relative luminance of sRGB, as WCAG 2.2 defines it. */
const luminance = (rgb: Colour): number => {
  const [r = 0, g = 0, b = 0] = rgb.map(part => {
    const share = part / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

const contrast = (a: Colour, b: Colour): number => {
  const [high = 1, low = 1] = [luminance(a), luminance(b)].toSorted((x, y) => y - x)
  return (high + 0.05) / (low + 0.05)
}

/** CIE 1976 lightness of a luminance relative to white. */
const lightness = (rgb: Colour): number => {
  const y = luminance(rgb)
  return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (y * 24389) / 27
}

const surfaces = ['surface', 'surface-raised', 'surface-sunken']

describe.each(['light', 'dark'] as const)('in the %s theme', theme => {
  it.each([...surfaces, 'photo-surround', 'text', 'text-quiet', 'line', 'line-strong', 'rail'])(
    '%s is neutral',
    name => {
      expect(new Set(colour(name, theme)).size).toBe(1)
    },
  )

  it.each(surfaces)('text on %s reads at 4.5 to 1, controls and focus stand out at 3 to 1', name => {
    const ground = colour(name, theme)
    expect(contrast(colour('text', theme), ground)).toBeGreaterThanOrEqual(7)
    expect(contrast(colour('text-quiet', theme), ground)).toBeGreaterThanOrEqual(4.5)
    expect(contrast(colour('line-strong', theme), ground)).toBeGreaterThanOrEqual(3)
    expect(contrast(colour('focus', theme), ground)).toBeGreaterThanOrEqual(3)
  })

  it.each(['state-sound', 'state-watch', 'state-fault', 'rail-chosen'])('words on %s read', name => {
    expect(contrast(colour(`${name}-text`, theme), colour(name, theme))).toBeGreaterThanOrEqual(4.5)
  })

  it('the rail reads', () => {
    expect(contrast(colour('rail-text', theme), colour('rail', theme))).toBeGreaterThanOrEqual(4.5)
  })

  it('the state ramp is monotone in lightness, with steps of at least 15', () => {
    const steps = ['state-sound', 'state-watch', 'state-fault'].map(name => lightness(colour(name, theme)))
    const signed = theme === 'light' ? steps : steps.map(step => -step)
    expect((signed[0] ?? 0) - (signed[1] ?? 0)).toBeGreaterThanOrEqual(15)
    expect((signed[1] ?? 0) - (signed[2] ?? 0)).toBeGreaterThanOrEqual(15)
  })
})
