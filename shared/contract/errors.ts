// The closed list of ways an operation can fail. Anything else becomes INTERNAL with an id that is in the log.
import { z } from 'zod'

/** What happened, to what, what to do: shown to the person as it stands. */
export const faultSchema = z.strictObject({ what: z.string(), where: z.string(), hint: z.string() })
export type Fault = z.infer<typeof faultSchema>

const error = (status: number) => ({ status, data: faultSchema })

export const faultCodes = {
  /** No such job, tray, task or file. */
  NOT_FOUND: error(404),
  /** The request does not fit the contract; `where` names the field. */
  BAD_INPUT: error(400),
  /** More than the limit. */
  TOO_LARGE: error(413),
  /** The job as it stands does not allow this. */
  REFUSED: error(409),
  /** Somebody else holds the catalogue: this window only reads. */
  READ_ONLY: error(423),
  /** A stored file does not match its hash or schema. */
  DAMAGED: error(422),
  /** Written by a newer version of the app. */
  NEWER_VERSION: error(426),
  /** The disk said no: full, gone, not permitted. */
  DISK: error(507),
  /** Should not happen; `where` holds the id under which the log has it. */
  INTERNAL: error(500),
} as const
export type FaultCode = keyof typeof faultCodes
