// Types of desktop-runtime.js, which is plain JavaScript because it runs before anything is installed.
type Environment = Record<string, string | undefined>

export function runtimePlaces(root: string): { folder: string; installer: string; failure: string }
export function findRuntime(root: string, env?: Environment): string | undefined
export function fetchRuntime(
  root: string,
  options?: {
    again?: boolean
    env?: Environment
    now?: () => number
    resolveName?: (host: string) => Promise<unknown>
    limitMs?: number
  },
): Promise<{ program: string; why?: undefined } | { program?: undefined; why: string }>
