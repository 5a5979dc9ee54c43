// The only IPC there is: the token and file refs, each after the sender was checked.
import { basename, isAbsolute } from 'node:path'
import { ipcMain, type IpcMainInvokeEvent } from 'electron'
import { z } from 'zod'
import { FaultError } from '../services/fault.ts'
import type { WaitingFiles } from '../services/waiting-files.ts'
import { isOurs } from './origin.ts'

type Answers = { token: string; files: WaitingFiles }

/** Only the main frame of our own page is answered; an empty or foreign sender never. */
export function isOurSender(event: Pick<IpcMainInvokeEvent, 'senderFrame'>): boolean {
  const frame = event.senderFrame
  return frame !== null && frame.parent === null && isOurs(frame.url)
}

function answer<T>(channel: string, input: z.ZodType<T>, work: (value: T) => unknown): void {
  ipcMain.handle(channel, (event, value: unknown) => {
    if (!isOurSender(event)) throw new Error('This window may not ask.')
    return work(input.parse(value))
  })
}

const path = z.string().min(1).max(4096).refine(isAbsolute)

export function answerPage({ token, files }: Answers): void {
  answer('session', z.undefined(), () => token)
  answer('file-ref', path, file => {
    try {
      return files.inPlace(file, basename(file))
    } catch (error) {
      // IPC carries only a message: the person's words.
      throw new Error(error instanceof FaultError ? error.message : 'The file cannot be taken in.', {
        cause: error,
      })
    }
  })
}
