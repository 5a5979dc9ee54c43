// The contract, carried out: each operation is one line to the service behind it; faults become the contract's errors.
import { implement, ORPCError, ValidationError } from '@orpc/server'
import { type Change, contract } from '../../shared/contract/contract.ts'
import { checkLayout } from '../../shared/engine/check-layout.ts'
import { FaultError } from './fault.ts'
import { type Services, unknownFault } from './services.ts'
import { writeUpPdf } from './write-up/write-up-pdf.ts'
import { faultCodes } from '../../shared/contract/errors.ts'

export type RouterContext = { services: Services }

const api = implement(contract).$context<RouterContext>()

/** Runs an operation and gives its failures the contract's words. */
const guarded = api.middleware(async ({ context, next }) => {
  try {
    return await next()
  } catch (error) {
    throw asContractError(error, context.services)
  }
})

function asContractError(error: unknown, services: Services): ORPCError<string, unknown> {
  if (error instanceof ORPCError && error.code === 'BAD_REQUEST') return badInput(error)
  if (error instanceof ORPCError && error.code in faultCodes) return error
  const fault = error instanceof FaultError ? error : unknownFault(error, services.log)
  const { status } = faultCodes[fault.code]
  return new ORPCError(fault.code, { defined: true, status, message: fault.fault.what, data: fault.fault })
}

/** Input that does not fit the contract: says where. */
function badInput(error: ORPCError<string, unknown>): ORPCError<string, unknown> {
  const issues = error.cause instanceof ValidationError ? error.cause.issues : []
  const first = issues[0]
  const where =
    first?.path?.map(part => (typeof part === 'object' ? String(part.key) : String(part))).join('.') ?? ''
  const fault = {
    what: first?.message ?? 'The request does not fit the contract.',
    where,
    hint: 'Nothing was changed.',
  }
  return new ORPCError('BAD_INPUT', { defined: true, status: 400, message: fault.what, data: fault })
}

async function* changesOf(services: Services, signal: AbortSignal | undefined): AsyncGenerator<Change> {
  const queue: Change[] = []
  let wake = () => {}
  const stop = services.onChange(change => {
    queue.push(change)
    wake()
  })
  signal?.addEventListener('abort', () => wake(), { once: true })
  try {
    while (signal?.aborted !== true) {
      const next = queue.shift()
      if (next) yield next
      else
        await new Promise<void>(resolve => {
          wake = resolve
        })
    }
  } finally {
    stop()
  }
}

const operations = api.use(guarded)

export const router = api.router({
  catalogue: {
    status: operations.catalogue.status.handler(({ context }) => context.services.status()),
    check: operations.catalogue.check.handler(({ context, input }) => ({
      taskId: context.services.startCheck(input.mend),
    })),
    changes: operations.catalogue.changes.handler(({ context, signal }) =>
      changesOf(context.services, signal),
    ),
  },
  settings: {
    get: operations.settings.get.handler(({ context }) => context.services.catalogue.settings.get()),
    set: operations.settings.set.handler(async ({ context, input }) => {
      const settings = await context.services.catalogue.settings.set(input)
      context.services.tell({ kind: 'settings' })
      return settings
    }),
  },
  layouts: {
    own: operations.layouts.own.handler(({ context }) => context.services.catalogue.layouts.get()),
    save: operations.layouts.save.handler(async ({ context, input }) => {
      const [problem] = checkLayout(input)
      if (problem)
        throw new FaultError('REFUSED', {
          what: problem.message,
          where: problem.field,
          hint: 'Correct it and save again.',
        })
      const { layouts } = context.services.catalogue
      const saved = await layouts.set([
        ...layouts.get().filter(one => one.id !== input.id),
        { ...input, own: true },
      ])
      context.services.tell({ kind: 'layouts' })
      return saved
    }),
    remove: operations.layouts.remove.handler(async ({ context, input }) => {
      const { layouts } = context.services.catalogue
      const saved = await layouts.set(layouts.get().filter(one => one.id !== input.id))
      context.services.tell({ kind: 'layouts' })
      return saved
    }),
  },
  jobs: {
    list: operations.jobs.list.handler(({ context }) => context.services.catalogue.list()),
    create: operations.jobs.create.handler(({ context, input }) => {
      const [problem] = checkLayout(input.layout)
      if (problem)
        throw new FaultError('REFUSED', {
          what: problem.message,
          where: problem.field,
          hint: 'Correct the layout.',
        })
      return context.services.jobs.create(input)
    }),
    get: operations.jobs.get.handler(({ context, input }) => context.services.jobs.get(input.id)),
    apply: operations.jobs.apply.handler(({ context, input }) =>
      context.services.jobs.apply(input.id, input.command),
    ),
    undo: operations.jobs.undo.handler(({ context, input }) => context.services.jobs.undo(input.id)),
    redo: operations.jobs.redo.handler(({ context, input }) => context.services.jobs.redo(input.id)),
    duplicate: operations.jobs.duplicate.handler(({ context, input }) =>
      context.services.jobs.duplicate(input.id),
    ),
    remove: operations.jobs.remove.handler(async ({ context, input }) => {
      await context.services.jobs.remove(input.id)
      return input
    }),
    restore: operations.jobs.restore.handler(({ context, input }) => context.services.jobs.restore(input.id)),
  },
  intake: {
    start: operations.intake.start.handler(async ({ context, input }) => ({
      taskId: await context.services.startIntake(input),
    })),
  },
  tasks: {
    watch: operations.tasks.watch.handler(({ context, input }) => context.services.tasks.watch(input.taskId)),
    cancel: operations.tasks.cancel.handler(({ context, input }) => ({
      cancelled: context.services.tasks.cancel(input.taskId),
    })),
  },
  writeUp: {
    pdf: operations.writeUp.pdf.handler(async ({ context, input }) => {
      const { job } = await context.services.jobs.get(input.jobId)
      const { catalogue, exports } = context.services
      const { bytes, fileName } = await writeUpPdf(
        job,
        input.audience,
        catalogue.settings.get(),
        catalogue.photos,
      )
      return {
        exportId: exports.add({ bytes, fileName, type: 'application/pdf' }),
        fileName,
        bytes: bytes.length,
      }
    }),
  },
  demo: {
    load: operations.demo.load.handler(({ context }) => ({ taskId: context.services.startDemo() })),
  },
})
