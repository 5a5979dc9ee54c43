// The only IPC there is: the session token and file refs, each after the sender was checked.
import { basename, isAbsolute } from 'node:path'
import { type IpcMainInvokeEvent, ipcMain, type WebContents } from 'electron'
import { z } from 'zod'
import { FaultError } from '../services/fault.ts'
import type { WaitingFiles } from '../services/waiting-files.ts'
import { isOurs } from './origin.ts'

type Sender = Pick<IpcMainInvokeEvent, 'sender' | 'senderFrame'>

/** Only the main frame of our own page in our own window is answered; an empty or foreign sender never. */
export function isOurSender({ sender, senderFrame }: Sender, contents: WebContents): boolean {
  return (
    sender === contents &&
    senderFrame !== null &&
    senderFrame.parent === null &&
    senderFrame === contents.mainFrame &&
    isOurs(senderFrame.url)
  )
}

/** What the preload gets: a value, or words for the person. An exception would reach it with words of Electron's own. */
export type Reply = { value: string } | { refused: string }

/** The one place where a channel is opened. */
function answer<T>(
  contents: WebContents,
  channel: string,
  input: z.ZodType<T>,
  work: (value: T) => string,
): void {
  ipcMain.handle(channel, (event, given: unknown): Reply => {
    if (!isOurSender(event, contents)) return { refused: 'Only the app\u2019s own page may ask.' }
    const parsed = input.safeParse(given)
    if (!parsed.success) return { refused: 'This file is not a file on this computer\u2019s disk.' }
    try {
      return { value: work(parsed.data) }
    } catch (error) {
      return { refused: error instanceof FaultError ? error.message : 'The file cannot be taken in.' }
    }
  })
}

const path = z.string().min(1).max(4096).refine(isAbsolute)

export function answerPage(
  contents: WebContents,
  { token, files }: { token: string; files: Pick<WaitingFiles, 'inPlace'> },
): void {
  answer(contents, 'session', z.undefined(), () => token)
  answer(contents, 'file-ref', path, file => files.inPlace(file, basename(file)))
}
