// A command in a few words, as it stands after "Undo" and "Redo".
import { slotKey } from '../engine/slots.ts'
import type { Command, ReadingChange, SlotAddress } from './command-schema.ts'
import type { Pull } from './pull-schema.ts'
import { unknownKind } from './unknown-kind.ts'

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

const cylinders = (slots: readonly SlotAddress[]): string =>
  `cylinder${slots.length === 1 ? '' : 's'} ${listed(slots.map(slotKey))}`

const shots = (list: readonly unknown[]): string => `${list.length} ${list.length === 1 ? 'shot' : 'shots'}`

const quantity = ({ value, unit }: { value: number; unit: string }): string => `${value} ${unit}`

/** A pull in a few words, quantities as they were entered: "pull 148 psi, cylinder 3". */
export const pullWords = (pull: Pull): string => {
  switch (pull.test) {
    case 'compression':
      return `${pull.entry.wet === true ? 'wet pull' : 'pull'} ${quantity(pull.entry.final)}, cylinder ${pull.cylinder}`
    case 'balance':
      return `cut-out ${pull.entry.rpmBefore} to ${pull.entry.rpmAfter} rpm, cylinder ${pull.cylinder}`
    case 'vacuum':
      return `vacuum ${quantity(pull.entry.reading)}, ${pull.entry.phase}`
    case 'leak-down':
      return pull.entry.form === 'percent'
        ? `leak-down ${pull.entry.percent} %, cylinder ${pull.cylinder}`
        : `leak-down ${pull.entry.held.value}/${pull.entry.supply.value}, cylinder ${pull.cylinder}`
    case 'running compression':
    case 'spark':
    case 'resistance':
    case 'injector balance':
    case 'injector':
    case 'misfire counts':
      return `${pull.test}, cylinder ${pull.cylinder}`
    case 'fuel pressure':
      return `fuel pressure ${quantity(pull.entry.pressure)}, ${pull.entry.state}`
    case 'trims':
      return `trims of bank ${pull.entry.bank}, ${pull.entry.state}`
    case 'swap':
      return `swap of ${pull.entry.named ?? pull.entry.part}, cylinder ${pull.entry.from}`
    case 'observation':
      return `${pull.entry.seen}: ${pull.entry.answer}`
    case 'trouble codes':
    case 'mode 06':
    case 'relative compression':
    case 'crank speed':
      return pull.test
    default:
      return unknownKind(pull)
  }
}

const detailNames = {
  insulatorColour: 'insulator colour',
  deposits: 'deposits',
  wetness: 'wetness',
  electrodeWear: 'electrode wear',
  insulatorDamage: 'insulator damage',
  gap: 'gap',
  oilInWell: 'oil in well',
} as const satisfies Record<keyof NonNullable<ReadingChange['details']>, string>

const reading = (change: ReadingChange): string => {
  if (change.condition !== undefined) return change.condition ?? 'without condition'
  const details = Object.entries(detailNames).flatMap(([field, name]) =>
    Object.entries(change.details ?? {}).some(([key, value]) => key === field && value !== undefined)
      ? [name]
      : [],
  )
  return listed([...details, ...(change.note === undefined ? [] : ['note'])])
}

/** E.g. "pull 148 psi, cylinder 3", "reading oil-wetted, cylinders 3 and 4". Quantities as they were entered. */
export const commandLabel = (command: Command): string => {
  switch (command.command) {
    case 'set complaint':
      return 'complaint'
    case 'set engine':
      return 'engine details'
    case 'set circumstances':
      return 'circumstances'
    case 'set technician':
      return command.technician === null ? 'remove technician' : `technician ${command.technician}`
    case 'set notes':
      return 'notes'
    case 'change layout':
      return `layout ${command.layout.name}`
    case 'set archived':
      return command.archived ? 'archive job' : 'take job out of the archive'
    case 'add tray':
      return `add tray "${command.name}"`
    case 'rename tray':
      return `name tray "${command.name}", ${command.stage}`
    case 'remove tray':
      return 'remove tray'
    case 'add shots':
      return `add ${shots(command.shots)}${command.to === undefined ? '' : `, ${cylinders([command.to])}`}`
    case 'move shots':
      return `move ${shots(command.shots)} to ${command.to === null ? 'unsorted' : cylinders([command.to])}`
    case 'fill slots':
      return `lay out ${shots(command.assignments)}`
    case 'swap slots':
      return `swap ${cylinders([command.a, command.b])}`
    case 'remove shots':
      return `remove ${shots(command.shots)}`
    case 'set shot kind':
      return `mark ${shots(command.shots)} as ${command.kind}`
    case 'set reading':
      return `reading ${reading(command.change)}, ${cylinders(command.slots)}`
    case 'clear reading':
      return `clear reading, ${cylinders(command.slots)}`
    case 'add pull':
      return pullWords(command.pull)
    case 'add pulls':
      return `${command.pulls.length} readings from a table`
    case 'void pull':
      return `void pull: ${command.reason}`
    case 'unvoid pull':
      return 'count voided pull again'
    case 'correct pulls':
      return `correct ${command.pullIds.length} ${command.pullIds.length === 1 ? 'pull' : 'pulls'}: ${command.reason}`
    case 'set up test':
      return `set-up of ${command.test}`
    case 'set instruments':
      return 'testers'
    case 'set repair':
      return command.repair === null ? 'remove repair' : 'repair'
    case 'set write-up':
      return 'write-up choices'
    default:
      return unknownKind(command)
  }
}
