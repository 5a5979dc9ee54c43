// How much a vacuum needle may move by nature: the fewer the cylinders, the further apart their intake strokes.

/**
 * Widest even ripple that is no fault, inHg from lowest to highest. That fours ripple evenly, sixes show a trace and
 * eights almost nothing is published (US Army TM 9-4910-677-14&P); no figure was found, these are ours and stay under the
 * 3 inHg from which a regular drop is published as a fault.
 */
export const naturalRipple = (cylinders: number): number => (cylinders <= 4 ? 2 : cylinders <= 6 ? 1 : 0.5)

export const rippleSource = 'US Army TM 9-4910-677-14&P for the number of cylinders; the figure is ours'

/** For a sentence on ripple: the count is why. */
export const engineOf = (cylinders: number): string => `an engine of ${cylinders} cylinders`
