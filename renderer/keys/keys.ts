// Every keyboard command as data: what it does, its keys, and where it applies. The sheet and the tests read this table.
import { conditions } from '../../shared/plug/condition.ts'
import { conditionKeys, oilInWellKey } from '../places/job/plugs/condition-keys.ts'

export type KeyContext = 'everywhere' | 'job list' | 'job' | 'deck' | 'plugs' | 'photo' | 'gauges'

export type KeyCommand = { context: KeyContext; keys: string; does: string }

export const keyCommands: readonly KeyCommand[] = [
  { context: 'everywhere', keys: '?', does: 'Show this sheet' },
  { context: 'everywhere', keys: 'Escape', does: 'Close a dialog' },
  { context: 'job list', keys: '/', does: 'Search' },
  { context: 'job list', keys: 'ArrowDown', does: 'Next job' },
  { context: 'job list', keys: 'ArrowUp', does: 'Previous job' },
  { context: 'job list', keys: 'Enter', does: 'Open the job' },
  { context: 'job', keys: 'Mod+Z', does: 'Undo' },
  { context: 'job', keys: 'Mod+Shift+Z', does: 'Redo' },
  { context: 'job', keys: 'Alt+1', does: 'Plugs' },
  { context: 'job', keys: 'Alt+2', does: 'Gauges' },
  { context: 'job', keys: 'Alt+3', does: 'Causes' },
  { context: 'job', keys: 'Alt+4', does: 'Write-up' },
  { context: 'deck', keys: 'Arrows', does: 'Go to the next bore that way' },
  { context: 'deck', keys: 'Enter', does: 'Select the bore' },
  { context: 'plugs', keys: 'Arrows', does: 'Next or previous plug in the order shown' },
  { context: 'plugs', keys: 'Shift+Arrows', does: 'Select several plugs' },
  ...conditions.map(condition => ({
    context: 'plugs' as const,
    keys: conditionKeys[condition].toUpperCase(),
    does: `Tag as ${condition}`,
  })),
  { context: 'plugs', keys: oilInWellKey.toUpperCase(), does: 'Oil in the plug well, yes or no' },
  { context: 'photo', keys: '+', does: 'Zoom in' },
  { context: 'photo', keys: '-', does: 'Zoom out' },
  { context: 'photo', keys: '0', does: 'Fit' },
  { context: 'photo', keys: '1', does: 'One picture pixel a screen pixel' },
  { context: 'photo', keys: 'Arrows', does: 'Move the picture when zoomed in' },
  { context: 'gauges', keys: 'Enter', does: 'Keep the number and go on' },
]
