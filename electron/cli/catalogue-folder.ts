// Which catalogue a command works on: --catalogue, else PLUGTRAY_CATALOGUE, else the user's data folder.
import { homedir } from 'node:os'
import { join, resolve } from 'node:path'

type Environment = Record<string, string | undefined>

/** Absolute path of the catalogue folder; the folder itself may not exist yet. */
export function catalogueFolder(
  asked: string | undefined,
  env: Environment,
  platform: NodeJS.Platform = process.platform,
): string {
  const named = asked ?? env.PLUGTRAY_CATALOGUE
  if (named) return resolve(named)
  return join(dataFolder(env, platform), 'Plugtray', 'catalogue')
}

/** The platform's folder for a program's data. */
function dataFolder(env: Environment, platform: NodeJS.Platform): string {
  if (platform === 'win32') return env.APPDATA ?? join(homedir(), 'AppData', 'Roaming')
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support')
  return env.XDG_DATA_HOME ?? join(homedir(), '.local', 'share')
}
