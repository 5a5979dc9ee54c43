// Pulls of any test for tests of judgement: the fields that a test does not speak of are filled in.
import type { PullOf } from '../../job/pull-schema.ts'
import type { Stage } from '../../job/tray-schema.ts'

type More = { stage?: Stage; minute?: number }

let made = 0
/** `minute` orders readings in time. */
const common = ({ stage = 'as found', minute = 0 }: More) => ({
  id: `made-${++made}`,
  stage,
  at: `2026-03-02T10:${String(minute).padStart(2, '0')}:00Z`,
})

export const misfires = (
  cylinder: number,
  count: number,
  during?: PullOf<'misfire counts'>['entry']['during'],
  more: More = {},
): PullOf<'misfire counts'> => ({
  ...common(more),
  test: 'misfire counts',
  cylinder,
  entry: { count, ...(during === undefined ? {} : { during }) },
})

export const codes = (
  list: PullOf<'trouble codes'>['entry']['codes'],
  more: More = {},
): PullOf<'trouble codes'> => ({ ...common(more), test: 'trouble codes', entry: { codes: list } })

export const mode06 = (hex: string, more: More = {}): PullOf<'mode 06'> => ({
  ...common(more),
  test: 'mode 06',
  entry: { hex },
})

export const spark = (
  cylinder: number,
  entry: PullOf<'spark'>['entry'],
  more: More = {},
): PullOf<'spark'> => ({ ...common(more), test: 'spark', cylinder, entry })

export const resistance = (
  cylinder: number,
  entry: PullOf<'resistance'>['entry'],
  more: More = {},
): PullOf<'resistance'> => ({ ...common(more), test: 'resistance', cylinder, entry })

export const fuelPressure = (
  entry: PullOf<'fuel pressure'>['entry'],
  more: More = {},
): PullOf<'fuel pressure'> => ({ ...common(more), test: 'fuel pressure', entry })

export const injectorDrop = (
  cylinder: number,
  entry: PullOf<'injector balance'>['entry'],
  more: More = {},
): PullOf<'injector balance'> => ({ ...common(more), test: 'injector balance', cylinder, entry })

export const injector = (
  cylinder: number,
  entry: PullOf<'injector'>['entry'],
  more: More = {},
): PullOf<'injector'> => ({ ...common(more), test: 'injector', cylinder, entry })

export const trims = (entry: PullOf<'trims'>['entry'], more: More = {}): PullOf<'trims'> => ({
  ...common(more),
  test: 'trims',
  entry,
})

export const swap = (entry: PullOf<'swap'>['entry'], more: More = {}): PullOf<'swap'> => ({
  ...common(more),
  test: 'swap',
  entry,
})

export const observed = (
  seen: PullOf<'observation'>['entry']['seen'],
  answer: 'yes' | 'no' = 'yes',
  more: More = {},
): PullOf<'observation'> => ({ ...common(more), test: 'observation', entry: { seen, answer } })
