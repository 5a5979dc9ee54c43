// The files of a drop, those inside dropped folders included, in the order of their names.

const mostFiles = 5000

/** Hidden files are left out, as are folders below depth 8. */
export async function filesIn(data: DataTransfer): Promise<File[]> {
  // Entries must be taken before anything is awaited: the drop is emptied afterwards.
  const entries = [...data.items].flatMap(item => item.webkitGetAsEntry() ?? [])
  const plain = [...data.files]
  if (entries.every(entry => entry.isFile)) return plain
  const found: File[] = []
  for (const entry of entries) await collect(entry, found, 0)
  return found.slice(0, mostFiles)
}

const isFile = (entry: FileSystemEntry): entry is FileSystemFileEntry => entry.isFile
const isFolder = (entry: FileSystemEntry): entry is FileSystemDirectoryEntry => entry.isDirectory

async function collect(entry: FileSystemEntry, found: File[], depth: number): Promise<void> {
  if (entry.name.startsWith('.') || found.length >= mostFiles) return
  if (isFile(entry)) found.push(await new Promise<File>((resolve, reject) => entry.file(resolve, reject)))
  else if (isFolder(entry) && depth < 8) {
    const reader = entry.createReader()
    const inside: FileSystemEntry[] = []
    for (;;) {
      const some = await new Promise<FileSystemEntry[]>((resolve, reject) =>
        reader.readEntries(resolve, reject),
      )
      if (some.length === 0) break
      inside.push(...some)
    }
    for (const one of inside.toSorted((a, b) => a.name.localeCompare(b.name, undefined, { numeric: true })))
      await collect(one, found, depth + 1)
  }
}
