// The engines people meet, numbering and firing order as published or in common use: check against the vehicle's
// service information. Left out, to be drawn as an own layout where the shop needs one: radials, narrow-angle and W
// engines, whose bores do not lie in the one or two straight rows that the deck draws; and the vee sixteen, of which
// only an order without its bank map was found, so that neighbours and banks would be guesses.
import type { EngineRow } from './engine-row.ts'
import { flatRows } from './layouts-flat-data.ts'
import { inlineRows } from './layouts-inline-data.ts'
import { veeRows } from './layouts-vee-data.ts'

export const engineRows: readonly EngineRow[] = [...inlineRows, ...veeRows, ...flatRows]
