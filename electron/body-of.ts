// The body of a request, piece by piece, so that what is too long is noticed before it is all here.

export async function* bodyOf(request: Request): AsyncGenerator<Uint8Array> {
  const reader = request.body?.getReader()
  if (!reader) return
  try {
    for (;;) {
      const { done, value } = await reader.read()
      if (done) return
      yield value
    }
  } finally {
    // Stops the sender where the reader gave up; a body that ended has nothing to cancel.
    await reader.cancel().catch(() => undefined)
  }
}
