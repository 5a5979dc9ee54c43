// The causes that are weighed, with their chance before anything is known. No published frequencies were found: each is a
// judgement of how often a cause is behind a rough engine that has its plugs out, kept small so that few faults coincide.

type Kind = 'mechanical' | 'ignition' | 'mixture' | 'oil and coolant' | 'plug' | 'test' | 'other'
type Cause<Of extends string> = {
  of: Of
  kind: Kind
  prior: number
  source: 'judgement'
}

const cause = <Of extends string>(of: Of, kind: Kind, prior: number): Cause<Of> => ({
  of,
  kind,
  prior,
  source: 'judgement',
})

/** One set for each cylinder; the chance is that of one cylinder. */
export const cylinderCauses = {
  'plug fouled': cause('cylinder', 'plug', 0.0064),
  'plug worn': cause('cylinder', 'plug', 0.0064),
  'plug cracked': cause('cylinder', 'plug', 0.0024),
  'plug loose': cause('cylinder', 'plug', 0.0016),
  'plug too hot': cause('cylinder', 'plug', 0.0008),
  'plug too cold': cause('cylinder', 'plug', 0.0008),
  'lead or boot': cause('cylinder', 'ignition', 0.0056),
  'coil or driver': cause('cylinder', 'ignition', 0.0064),
  'injector restricted': cause('cylinder', 'mixture', 0.004),
  'injector leaking': cause('cylinder', 'mixture', 0.0024),
  'runner air leak': cause('cylinder', 'mixture', 0.0024),
  'rings or bore': cause('cylinder', 'mechanical', 0.0032),
  'intake valve': cause('cylinder', 'mechanical', 0.0016),
  'exhaust valve': cause('cylinder', 'mechanical', 0.0032),
  'valve lift lost': cause('cylinder', 'mechanical', 0.0016),
  'piston holed': cause('cylinder', 'mechanical', 0.0004),
  'head gasket to coolant': cause('cylinder', 'mechanical', 0.0016),
  'coolant ingress': cause('cylinder', 'oil and coolant', 0.0008),
  'oil past rings': cause('cylinder', 'oil and coolant', 0.0024),
  'oil past guides': cause('cylinder', 'oil and coolant', 0.0024),
  'plug-well seal': cause('cylinder', 'oil and coolant', 0.004),
  'not modelled': cause('cylinder', 'other', 0.0024),
} as const

/** Between two neighbours of a bank; the chance is that of one web. */
export const pairCauses = {
  'head gasket to neighbour': cause('pair', 'mechanical', 0.002),
} as const

/** Of the whole engine, or of the one tool or setting that a test of it was made with. */
export const engineCauses = {
  'plenum air leak': cause('engine', 'mixture', 0.01),
  'low fuel delivery': cause('engine', 'mixture', 0.01),
  'high fuel pressure': cause('engine', 'mixture', 0.004),
  'metered too little fuel': cause('engine', 'mixture', 0.005),
  'metered too much fuel': cause('engine', 'mixture', 0.005),
  'EGR or purge stuck open': cause('engine', 'mixture', 0.006),
  'cam timing': cause('engine', 'mechanical', 0.005),
  'ignition timing': cause('engine', 'ignition', 0.004),
  'worn evenly': cause('engine', 'mechanical', 0.006),
  'exhaust restriction': cause('engine', 'other', 0.004),
  'oil carry-over': cause('engine', 'oil and coolant', 0.005),
  'thermostat or short trips': cause('engine', 'mixture', 0.008),
  'wrong plugs': cause('engine', 'plug', 0.004),
  detonation: cause('engine', 'other', 0.002),
  'weak battery': cause('engine', 'test', 0.008),
  'leaking gauge': cause('engine', 'test', 0.005),
  'throttle shut': cause('engine', 'test', 0.006),
  'cold engine': cause('engine', 'test', 0.006),
  'idle control masking': cause('engine', 'test', 0.006),
  'photo light wrong': cause('engine', 'test', 0.004),
  'engine not modelled': cause('engine', 'other', 0.005),
} as const

/** Of some cylinders together; the chance is shared out over the groups that the engine has. */
export const groupCauses = {
  'shared coil': cause('companions', 'ignition', 0.0008),
  crossfire: cause('firing neighbours', 'ignition', 0.0008),
  'bank air leak': cause('bank', 'mixture', 0.0005),
  'bank cam timing': cause('bank', 'mechanical', 0.0003),
} as const

export type CylinderCause = keyof typeof cylinderCauses
export type EngineCause = keyof typeof engineCauses
export type GroupCause = keyof typeof groupCauses
export type CauseId = CylinderCause | EngineCause | GroupCause | keyof typeof pairCauses

export const cylinderCauseIds = Object.keys(cylinderCauses) as CylinderCause[]
export const engineCauseIds = Object.keys(engineCauses) as EngineCause[]
export const groupCauseIds = Object.keys(groupCauses) as GroupCause[]
export const neighbourGasket = 'head gasket to neighbour'
