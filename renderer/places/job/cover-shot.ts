// The shot that stands for a plug: seen end-on if there is one, else the first.
import type { Shot, Slot } from '../../../shared/job/tray-schema.ts'

export const coverShot = (slot: Slot | undefined): Shot | undefined =>
  slot?.shots.find(shot => shot.kind === 'end-on') ?? slot?.shots[0]
