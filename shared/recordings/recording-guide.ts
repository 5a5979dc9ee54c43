// How a recording is taken, step by step, with the cautions that belong to each kind. Common practice.

export type RecordingGuide = {
  title: string
  cautions: readonly string[]
  steps: readonly string[]
  /** What the columns of the file may hold. */
  columns: string
  /** What the percentages are of. */
  percentOf: string
  /** What is marked in the picture. */
  marked: string
}

export const recordingGuides: Readonly<Record<'relative compression' | 'crank speed', RecordingGuide>> = {
  'relative compression': {
    title: 'Relative compression from starter current',
    cautions: [
      'Disable ignition and fuel injection by the vehicle’s service information, so that the engine cannot start.',
      'Nobody near belts, fan and pulleys while the engine is cranked. Neutral or park, parking brake on.',
      'Put the clamp around the battery or starter cable at a place away from moving and hot parts; tie its lead back.',
      'Let the starter cool between crankings.',
    ],
    steps: [
      'Charge the battery; connect a support if it sags.',
      'Set the clamp to a range above the in-rush of the starter (often 600 A or more), zero it, and put it around one cable alone.',
      'If you can, record a second channel from the ignition, injector or camshaft sensor of cylinder 1, so that the cylinders can be named.',
      'Start recording, hold the throttle open, crank for five to ten seconds, stop recording.',
      'Save as CSV and drop it here. No plug needs to come out.',
      'The humps compare the cylinders with each other; they are no pressures. Confirm a low cylinder with a gauge.',
    ],
    columns: 'time and amperes, and if there is one a sync channel',
    percentOf: 'of the highest',
    marked: 'compressions',
  },
  'crank speed': {
    title: 'Contribution to crank speed at idle',
    cautions: [
      'The engine runs: keep hands, hair, clothes and leads away from belts, fan and hot parts.',
      'Use exhaust extraction or fresh air. Neutral or park, parking brake on.',
    ],
    steps: [
      'Warm the engine up; switch heavy consumers off.',
      'Record the crank sensor, or the speed the scan data give at 100 samples a second or more, at a steady idle for fifteen seconds.',
      'If you can, record a channel from cylinder 1 as well, so that the cylinders can be named.',
      'Save as CSV, one row a tooth or one row a sample, and drop it here.',
    ],
    columns: 'time and rpm, or one row a tooth with its interval or time; and if there is one a sync channel',
    percentOf: 'of the mean',
    marked: 'power strokes',
  },
}
