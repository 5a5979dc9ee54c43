// Sizes of a plug's thread, worked out from diameter and pitch by the basic profile of ISO 68-1.

export const plugThreads = ['M8x1', 'M10x1', 'M12x1.25', 'M14x1.25', 'M18x1.5'] as const
export type PlugThread = (typeof plugThreads)[number]

const sizes: Readonly<Record<PlugThread, readonly [diameter: number, pitch: number]>> = {
  M8x1: [8, 1],
  M10x1: [10, 1],
  'M12x1.25': [12, 1.25],
  'M14x1.25': [14, 1.25],
  'M18x1.5': [18, 1.5],
}

export type ThreadSizes = {
  /** Over the crests, mm. */
  diameter: number
  /** From crest to crest, mm. */
  pitch: number
  /** Height of the sharp triangle, mm. */
  height: number
  pitchDiameter: number
  /** Of the hole in the head. */
  minorDiameter: number
  /** At the rounded root of the plug's own thread. */
  rootDiameter: number
}

/** Basic sizes in mm, without tolerances. */
export function threadSizes(thread: PlugThread): ThreadSizes {
  const [diameter, pitch] = sizes[thread]
  const height = (Math.sqrt(3) / 2) * pitch
  return {
    diameter,
    pitch,
    height,
    pitchDiameter: diameter - 0.75 * height,
    minorDiameter: diameter - 1.25 * height,
    rootDiameter: diameter - (17 / 12) * height,
  }
}
