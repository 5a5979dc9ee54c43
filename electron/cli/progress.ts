// Progress on stderr: one line that rewrites itself on a terminal, nothing where nobody is looking.
import process from 'node:process'
import { printable, type Terminal } from './command-line.ts'

/** Called with how far the work is; draws at most ten times a second. */
export function progressLine(terminal: Terminal): {
  step: (done: number, total: number, what: string) => void
  end: () => void
} {
  const shown = process.stderr.isTTY && terminal.env.TERM !== 'dumb'
  let last = 0
  return {
    step(done, total, what) {
      const now = Date.now()
      if (!shown || (now - last < 100 && done < total)) return
      last = now
      terminal.err(`\r\u001b[K${done} of ${total} ${printable(what).slice(0, 60)}`)
    },
    end() {
      if (shown && last > 0) terminal.err('\r\u001b[K')
    },
  }
}
