// Where the air of a leak-down test is heard to go, and which part that speaks of.
import type { EscapePath } from './leak-down-entry.ts'
import { inWords } from './shown.ts'

export type { EscapePath }

type Path = {
  means: string
  /** A path that should be tight: heard at all, it is worth a second look at any percentage. */
  shouldBeTight: boolean
}

const paths: Readonly<Record<EscapePath, Path>> = {
  intake: {
    means:
      'at the intake: intake valve, or the piston is not at top dead centre of compression. Debris can hold a valve: tap the stem lightly and test again',
    shouldBeTight: true,
  },
  exhaust: {
    means:
      'at the tailpipe: exhaust valve, or the piston is not at top dead centre of compression. Debris can hold a valve: tap the stem lightly and test again',
    shouldBeTight: true,
  },
  'oil filler': {
    means: 'at the oil filler: rings, piston or bore; rings always leak a little',
    shouldBeTight: false,
  },
  radiator: { means: 'as bubbles in the radiator: head gasket, cracked head or block', shouldBeTight: true },
  'next plug hole': {
    means: 'at the next plug hole: head gasket between the two cylinders',
    shouldBeTight: true,
  },
  'plug adapter': {
    means: 'at the plug adapter: its seal leaks, so the percentage is not that of the cylinder',
    shouldBeTight: false,
  },
  'nothing heard': { means: 'nowhere that could be heard', shouldBeTight: false },
}

/** In the order of the entry's words; this module may be loaded by a page, which must not load a schema. */
export const escapePathsInOrder: readonly EscapePath[] = [
  'intake',
  'exhaust',
  'oil filler',
  'radiator',
  'next plug hole',
  'plug adapter',
  'nothing heard',
]

export const shouldBeTight = (path: EscapePath): boolean => paths[path].shouldBeTight

/** "At the intake: intake valve ... At the next plug hole (cylinder 3): ..." */
export const escapeWords = (escapes: readonly EscapePath[], towards: readonly number[]): string =>
  escapes
    .map(path =>
      path === 'next plug hole' && towards.length > 0
        ? `at the plug hole of cylinder ${inWords(towards)}: head gasket between the two`
        : paths[path].means,
    )
    .map(words => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`)
    .join(' ')
