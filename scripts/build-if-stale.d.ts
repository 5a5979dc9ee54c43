// Types of build-if-stale.js, which is plain JavaScript because it runs before anything is installed.
export function isStale(folder?: string): boolean
export function buildIfStale(): void
