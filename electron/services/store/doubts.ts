// What a failing disk left in doubt: looked at again every second until the disk answers.

export type Doubts = {
  /** `look` gives true once it knows. */
  add: (what: string, look: () => Promise<boolean>) => void
  /** Looks at everything once, now. */
  settle: () => Promise<void>
  close: () => void
}

const everyMs = 1_000

export function createDoubts(): Doubts {
  const open = new Map<string, () => Promise<boolean>>()
  let timer: NodeJS.Timeout | undefined

  const rest = () => {
    clearInterval(timer)
    timer = undefined
  }
  async function settle(): Promise<void> {
    for (const [what, look] of open) if (await look()) open.delete(what)
    if (open.size === 0) rest()
  }
  return {
    add(what, look) {
      open.set(what, look)
      timer ??= setInterval(() => void settle(), everyMs)
      timer.unref()
    },
    settle,
    close() {
      open.clear()
      rest()
    },
  }
}
