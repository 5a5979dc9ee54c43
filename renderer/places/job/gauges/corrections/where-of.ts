// What a pull is of, in a word or two: its cylinder or the engine.
import type { Pull } from '../../../../../shared/job/pull-schema.ts'

export const whereOf = (pull: Pull): string => ('cylinder' in pull ? `cylinder ${pull.cylinder}` : 'engine')

/** "2026-03-01 14:20", the form used for every pull. */
export const whenOf = (at: string): string => at.slice(0, 16).replace('T', ' ')
