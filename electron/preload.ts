// The bridge into the sandboxed page: the session token and refs for files, nothing else. No library but electron.
import { contextBridge, ipcRenderer, webUtils } from 'electron'

/** A reply of the host: the value, or the words of its refusal. */
async function ask(channel: string, value?: string): Promise<string> {
  const reply: unknown = await ipcRenderer.invoke(channel, value)
  if (typeof reply === 'object' && reply !== null) {
    if ('value' in reply && typeof reply.value === 'string') return reply.value
    if ('refused' in reply && typeof reply.refused === 'string') throw new Error(reply.refused)
  }
  throw new Error('The app did not answer.')
}

contextBridge.exposeInMainWorld('plugtray', {
  /** The token that every request of the page carries. */
  session: () => ask('session'),
  /** A ref for a real file that the person chose or dropped; the page never learns its path. */
  fileRef: (file: File) => ask('file-ref', webUtils.getPathForFile(file)),
})
