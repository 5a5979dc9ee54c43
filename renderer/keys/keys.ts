// Every keyboard command as data: what it does, its keys, and where it applies. Listeners, the sheet and the tests all
// read this table, so that what is printed is what happens.
import { conditions } from '../../shared/plug/condition.ts'
import { conditionKeys, oilInWellKey } from '../places/job/plugs/condition-keys.ts'

export type KeyContext = 'everywhere' | 'job list' | 'job' | 'deck' | 'plugs' | 'photo' | 'gauges'

export type KeyCommand = {
  context: KeyContext
  /** `Mod` is Ctrl, or Cmd on a Mac. */
  keys: string
  does: string
  /** Names the command to `useKeys`; absent where a part listens by itself while it has focus. */
  id?: string
  /** Works from within a field too: nothing that types a letter there, nor the field's own undo. */
  whileTyping?: true
}

/** Where a context lies inside another one: both listen at the same time. */
export const outerContext: Readonly<Record<KeyContext, KeyContext | undefined>> = {
  everywhere: undefined,
  'job list': 'everywhere',
  job: 'everywhere',
  deck: 'job',
  plugs: 'job',
  photo: 'job',
  gauges: 'job',
}

export const keyCommands = [
  { context: 'everywhere', keys: '?', does: 'Show this sheet', id: 'keys' },
  { context: 'everywhere', keys: 'Escape', does: 'Close a dialog or menu' },
  { context: 'everywhere', keys: 'Alt+0', does: 'Go to the jobs', id: 'jobs', whileTyping: true },
  { context: 'everywhere', keys: 'Mod+,', does: 'Go to Setup', id: 'setup', whileTyping: true },
  { context: 'job list', keys: '/', does: 'Search', id: 'search' },
  { context: 'job list', keys: 'Arrows', does: 'Next or previous job' },
  { context: 'job list', keys: 'Enter', does: 'Open the job' },
  { context: 'job', keys: 'Mod+Z', does: 'Undo', id: 'undo' },
  { context: 'job', keys: 'Mod+Shift+Z', does: 'Redo', id: 'redo' },
  { context: 'job', keys: 'Mod+Y', does: 'Redo', id: 'redo' },
  { context: 'job', keys: 'Alt+1', does: 'Plugs', id: 'plugs', whileTyping: true },
  { context: 'job', keys: 'Alt+2', does: 'Gauges', id: 'gauges', whileTyping: true },
  { context: 'job', keys: 'Alt+3', does: 'Causes', id: 'causes', whileTyping: true },
  { context: 'job', keys: 'Alt+4', does: 'Write-up', id: 'write-up', whileTyping: true },
  { context: 'deck', keys: 'Arrows', does: 'Go to the next bore that way' },
  { context: 'deck', keys: 'Mod+Arrows', does: 'Go there, keep the selection' },
  { context: 'deck', keys: 'Enter', does: 'Select the bore' },
  { context: 'deck', keys: 'Mod+Enter', does: 'Add the bore to the selection, or take it out' },
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
  { context: 'gauges', keys: 'Backspace', does: 'In an empty field: go back' },
  { context: 'gauges', keys: '1 to 9', does: 'In a choice: choose that option' },
  { context: 'gauges', keys: 'Arrows', does: 'Next or previous test, or option of a choice' },
] as const satisfies readonly KeyCommand[]

export type KeyCommandId = Extract<(typeof keyCommands)[number], { id: string }>['id']
