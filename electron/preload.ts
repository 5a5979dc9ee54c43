// The bridge into the sandboxed page: the session token and refs for files, nothing else. No library but electron.
import { contextBridge, ipcRenderer, webUtils } from 'electron'

contextBridge.exposeInMainWorld('plugtray', {
  /** The token that every request of the page carries. */
  session: (): Promise<unknown> => ipcRenderer.invoke('session'),
  /** A ref for a real file that the person chose or dropped; the page never learns its path. */
  fileRef: (file: File): Promise<unknown> => ipcRenderer.invoke('file-ref', webUtils.getPathForFile(file)),
})
