// A child that asks for the lock of the folders it is told, says who got it, and lets go or dies when told to.
import { writeSync } from 'node:fs'
import { createInterface } from 'node:readline'
import { realDisk } from '../../../../electron/services/store/disk.ts'
import { type Lock, takeLock } from '../../../../electron/services/store/lock.ts'
import { open } from '../example.ts'

let lock: Lock | undefined
const say = (line: string) => writeSync(1, `${line}\n`)

const orders: Record<string, (folder: string) => Promise<void>> = {
  async ask(folder) {
    const attempt = await takeLock(realDisk, folder, '0.0.0')
    if ('lock' in attempt) lock = attempt.lock
    say('lock' in attempt ? `won ${process.pid}` : `not ${attempt.heldBy}`)
  },
  async letgo() {
    await lock?.release()
    lock = undefined
    say('free')
  },
  async open(folder) {
    const catalogue = await open(folder)
    say(catalogue.readOnly === null ? `won ${process.pid}` : `not ${catalogue.readOnly}`)
  },
}

say('ready')
for await (const line of createInterface({ input: process.stdin })) {
  const [order = '', folder = ''] = line.split(' ')
  await orders[order]?.(folder)
}
