// Between node:http and the fetch handler: a request as the handler takes it, its answer as the socket takes it.
import type { IncomingMessage, ServerResponse } from 'node:http'
import { limits } from '../limits.ts'

export function toRequest(request: IncomingMessage, address: string, signal: AbortSignal): Request {
  const headers = new Headers()
  for (const [name, value] of Object.entries(request.headers))
    if (value !== undefined) headers.set(name, Array.isArray(value) ? value.join(', ') : value)
  const method = request.method ?? 'GET'
  const init: RequestInit & { duplex?: 'half' } = { method, headers, signal }
  if (method !== 'GET') {
    init.body = bodyOf(request)
    init.duplex = 'half'
  }
  return new Request(`http://${address}${request.url ?? '/'}`, init)
}

/** The body as it arrives; a handler that stops reading early still gets its answer through. */
function bodyOf(request: IncomingMessage): ReadableStream<Uint8Array<ArrayBuffer>> {
  const chunks: AsyncIterator<Buffer<ArrayBuffer>> = request.iterator({ destroyOnReturn: false })
  return new ReadableStream(
    {
      async pull(controller) {
        const { done, value } = await chunks.next()
        if (done) controller.close()
        else controller.enqueue(value)
      },
      async cancel() {
        await chunks.return?.()
      },
    },
    { highWaterMark: 0 },
  )
}

/** Sends the answer at the pace of the reader. */
export async function send(
  request: IncomingMessage,
  response: ServerResponse,
  answer: Response,
): Promise<void> {
  const early = !request.complete
  response.writeHead(answer.status, {
    ...Object.fromEntries(answer.headers),
    ...(early ? { connection: 'close' } : {}),
  })
  if (answer.body) {
    const reader = answer.body.getReader()
    response.on('close', () => void reader.cancel().catch(() => undefined))
    for (;;) {
      const { done, value } = await reader.read()
      if (done) break
      if (!response.write(value))
        await new Promise(resolve => response.once('drain', resolve).once('close', resolve))
      if (response.destroyed) return
    }
  }
  if (early) endEarly(request)
  response.end()
}

/**
 * The rest of a body that nobody wants is thrown away for a moment, so that the sender gets to read its answer instead of
 * a broken connection; then the connection ends.
 */
export function endEarly(request: IncomingMessage): void {
  const { socket } = request
  request.resume()
  setTimeout(() => socket.destroy(), limits.lingerMs).unref()
}
