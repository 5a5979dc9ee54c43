// A disk in memory that tells what is safe from what a power cut may still take: content that was not flushed, and names
// of files whose folder was not flushed. A rename is one step, as on a journalling file system: both its names or none.
import { dirname, basename } from 'node:path/posix'
import type { Disk } from '../../../electron/services/store/disk.ts'

type File = { kind: 'file'; ino: number; mtimeMs: number; content: Buffer; isSafe: boolean }
type Folder = { kind: 'folder'; names: Map<string, Node>; safe: Map<string, Node> }
type Node = File | Folder
type NameChange = { folder: Folder; name: string; node: Node | null }
/** One operation on names that no flush has made safe yet. */
type Pending = NameChange[]

/** What survives a power cut is chosen by these; both are asked in a fixed order. */
export type Choice = {
  keepsName: () => boolean
  content: (written: Buffer) => Buffer
}

const failure = (code: string, path: string) => Object.assign(new Error(`${code}: ${path}`), { code })

export class SimulatedDisk {
  #root: Folder = { kind: 'folder', names: new Map(), safe: new Map() }
  #pending: Pending[] = []
  #nextIno = 1
  #clock = Date.now()
  /** Called after every operation that changes anything. */
  afterChange: () => void = () => {}
  /** Asked before every flush; false makes the flush do nothing, as if the program had forgotten it. */
  flushes: () => boolean = () => true

  #find(path: string): Node | null {
    let node: Node | undefined = this.#root
    for (const part of path.split('/').filter(Boolean)) {
      if (node?.kind !== 'folder') return null
      node = node.names.get(part)
    }
    return node ?? null
  }

  #folder(path: string): Folder {
    const found = this.#find(path)
    if (!found) throw failure('ENOENT', path)
    if (found.kind !== 'folder') throw failure('ENOTDIR', path)
    return found
  }

  #file(path: string): File {
    const found = this.#find(path)
    if (!found) throw failure('ENOENT', path)
    if (found.kind !== 'file') throw failure('EISDIR', path)
    return found
  }

  #change(changes: NameChange[]): void {
    for (const { folder, name, node } of changes)
      if (node) folder.names.set(name, node)
      else folder.names.delete(name)
    this.#pending.push(changes)
    this.afterChange()
  }

  #place(path: string): { folder: Folder; name: string } {
    return { folder: this.#folder(dirname(path)), name: basename(path) }
  }

  #makeSafe(pending: Pending): void {
    for (const { folder, name, node } of pending)
      if (node) folder.safe.set(name, node)
      else folder.safe.delete(name)
  }

  readonly disk: Disk = {
    read: async path => Buffer.from(this.#file(path).content),
    list: async path => [...this.#folder(path).names.keys()].toSorted(),
    stamp: async path => {
      const found = this.#find(path)
      if (found?.kind !== 'file') return null
      return { mtimeMs: found.mtimeMs, size: found.content.length, ino: found.ino }
    },
    isFolder: async path => this.#find(path)?.kind === 'folder',
    create: async path => {
      const { folder, name } = this.#place(path)
      if (folder.names.has(name)) throw failure('EEXIST', path)
      const file: File = {
        kind: 'file',
        ino: this.#nextIno++,
        mtimeMs: this.#clock++,
        content: Buffer.alloc(0),
        isSafe: false,
      }
      this.#change([{ folder, name, node: file }])
      return {
        write: async bytes => {
          file.content = Buffer.concat([file.content, bytes])
          file.isSafe = false
          this.afterChange()
        },
        sync: async () => {
          if (this.flushes()) file.isSafe = true
          this.afterChange()
        },
        close: async () => {},
      }
    },
    rename: async (from, to) => {
      const a = this.#place(from)
      const b = this.#place(to)
      const node = a.folder.names.get(a.name)
      if (!node) throw failure('ENOENT', from)
      const taken = b.folder.names.get(b.name)
      if (taken?.kind === 'folder' && taken.names.size > 0) throw failure('ENOTEMPTY', to)
      this.#change([
        { ...a, node: null },
        { ...b, node },
      ])
    },
    link: async (from, to) => {
      const node = this.#file(from)
      const { folder, name } = this.#place(to)
      if (folder.names.has(name)) throw failure('EEXIST', to)
      this.#change([{ folder, name, node }])
    },
    makeFolder: async path => {
      const { folder, name } = this.#place(path)
      if (folder.names.has(name)) return false
      this.#change([{ folder, name, node: { kind: 'folder', names: new Map(), safe: new Map() } }])
      return true
    },
    syncFolder: async path => {
      const folder = this.#folder(path)
      if (!this.flushes()) return
      const touching = this.#pending.filter(one => one.some(change => change.folder === folder))
      for (const one of touching) this.#makeSafe(one)
      this.#pending = this.#pending.filter(one => !touching.includes(one))
      this.afterChange()
    },
    remove: async path => {
      this.#file(path)
      this.#change([{ ...this.#place(path), node: null }])
    },
    removeTree: async path => {
      if (this.#find(path)) this.#change([{ ...this.#place(path), node: null }])
    },
  }

  /** The same disk as it is now, to go on with separately. */
  copy(): SimulatedDisk {
    const other = new SimulatedDisk()
    const copies = new Map<Node, Node>()
    const copyOf = (node: Node): Node => {
      const known = copies.get(node)
      if (known) return known
      if (node.kind === 'file') {
        const file = { ...node }
        copies.set(node, file)
        return file
      }
      const folder: Folder = { kind: 'folder', names: new Map(), safe: new Map() }
      copies.set(node, folder)
      for (const [name, child] of node.names) folder.names.set(name, copyOf(child))
      for (const [name, child] of node.safe) folder.safe.set(name, copyOf(child))
      return folder
    }
    const folderCopy = (folder: Folder): Folder => {
      const copied = copyOf(folder)
      if (copied.kind !== 'folder') throw new Error('a folder is copied as a folder')
      return copied
    }
    other.#root = folderCopy(this.#root)
    other.#pending = this.#pending.map(one =>
      one.map(({ folder, name, node }) => ({ folder: folderCopy(folder), name, node: node && copyOf(node) })),
    )
    other.#nextIno = this.#nextIno
    other.#clock = this.#clock
    return other
  }

  /** What the next start finds after a power cut now. */
  afterPowerCut(choice: Choice): SimulatedDisk {
    const after = this.copy()
    for (const one of after.#pending) if (choice.keepsName()) after.#makeSafe(one)
    after.#pending = []
    const settle = (folder: Folder) => {
      folder.names = new Map(folder.safe)
      for (const node of folder.names.values())
        if (node.kind === 'folder') settle(node)
        else if (!node.isSafe) {
          node.content = choice.content(node.content)
          node.isSafe = true
        }
    }
    settle(after.#root)
    return after
  }

  /** Replaces the content of a file by hand. */
  alter(path: string, content: Buffer): void {
    this.#file(path).content = content
  }
}
