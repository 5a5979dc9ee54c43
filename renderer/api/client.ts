// The typed client of the contract, the same in a browser and in the desktop window, and the raw byte routes beside it.
import { createORPCClient, ORPCError } from '@orpc/client'
import { RPCLink } from '@orpc/client/fetch'
import type { ContractRouterClient } from '@orpc/contract'
import type { Contract } from '../../shared/contract/contract.ts'
import type { Fault } from '../../shared/contract/errors.ts'
import {
  exportRoute,
  fileNameHeader,
  type PhotoKind,
  photoPath,
  rpcPrefix,
  sessionHeader,
  uploadRoute,
} from '../../shared/contract/routes.ts'
import type { Session } from './session.ts'

export type Client = ContractRouterClient<Contract>

export type Host = {
  api: Client
  /** Hands a file over and gives its ref for an import. */
  upload: (file: File, signal: AbortSignal) => Promise<string>
  photo: (sha256: string, kind: PhotoKind, signal: AbortSignal) => Promise<Blob>
  exported: (exportId: string) => Promise<Blob>
}

export function connect({ token, desktop }: Session): Host {
  const headers = { [sessionHeader]: token }
  const link = new RPCLink({ url: `${window.location.origin}${rpcPrefix}`, headers })
  const bytes = async (path: string, signal?: AbortSignal): Promise<Blob> => {
    const answer = await fetch(path, { headers, ...(signal ? { signal } : {}) })
    if (!answer.ok) throw await failureOf(answer)
    return answer.blob()
  }
  return {
    api: createORPCClient(link),
    async upload(file, signal) {
      if (desktop) return desktop.fileRef(file)
      const answer = await fetch(uploadRoute, {
        method: 'POST',
        headers: {
          ...headers,
          'content-type': 'application/octet-stream',
          [fileNameHeader]: encodeURIComponent(file.name),
        },
        body: file,
        signal,
      })
      if (!answer.ok) throw await failureOf(answer)
      const body: unknown = await answer.json()
      if (typeof body === 'object' && body !== null && 'ref' in body && typeof body.ref === 'string')
        return body.ref
      throw new Error('The upload was not acknowledged.')
    },
    photo: (sha256, kind, signal) => bytes(photoPath(sha256, kind), signal),
    exported: exportId => bytes(`${exportRoute}/${exportId}`),
  }
}

const isFault = (value: unknown): value is Fault =>
  typeof value === 'object' && value !== null && 'what' in value && 'where' in value && 'hint' in value

/** An answer of the byte routes that is not a success. */
async function failureOf(answer: Response): Promise<Error> {
  const text = await answer.text()
  try {
    const body: unknown = JSON.parse(text)
    if (typeof body === 'object' && body !== null && 'fault' in body && isFault(body.fault))
      return new Error(sentence(body.fault))
  } catch {
    // Plain words then.
  }
  return new Error(text || `The host answered ${answer.status}.`)
}

const sentence = ({ what, where, hint }: Fault): string =>
  [what, where ? `(${where})` : '', hint].filter(part => part !== '').join(' ')

/** Any failure as one sentence a person can act on. */
export function inWords(error: unknown): string {
  if (error instanceof ORPCError && isFault(error.data)) return sentence(error.data)
  if (error instanceof TypeError)
    return 'Plugtray does not answer. Is it still running? Nothing that was saved is lost.'
  return error instanceof Error ? error.message : String(error)
}
