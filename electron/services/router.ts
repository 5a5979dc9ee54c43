// The contract, carried out: each operation is one line to the service behind it; faults become the contract's errors.
import { implement, ORPCError, ValidationError } from '@orpc/server'
import { contract } from '../../shared/contract/contract.ts'
import { faultCodes } from '../../shared/contract/errors.ts'
import { contractError } from './contract-error.ts'
import { FaultError } from './fault.ts'
import { requireSoundLayout } from './own-layouts.ts'
import { readReadingsCsv } from './readings-csv.ts'
import { type Services, unknownFault } from './services.ts'

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
  if (error instanceof ORPCError && error.code === 'BAD_REQUEST') return contractError(badInput(error))
  if (error instanceof ORPCError && error.defined && error.code in faultCodes) return error
  return contractError(error instanceof FaultError ? error : unknownFault(error, services.log))
}

/** Input that does not fit the contract: says which field. */
function badInput(error: ORPCError<string, unknown>): FaultError {
  const [first] = error.cause instanceof ValidationError ? error.cause.issues : []
  const where = first?.path?.map(part => String(typeof part === 'object' ? part.key : part)).join('.')
  return new FaultError('BAD_INPUT', {
    what: first?.message ?? 'The request does not fit the contract.',
    where: where ?? '',
    hint: 'Nothing was changed.',
  })
}

const { catalogue, settings, layouts, jobs, intake, tasks, writeUp, recordings, readingsCsv, demo } =
  api.use(guarded)

export const router = api.router({
  catalogue: {
    status: catalogue.status.handler(({ context }) => context.services.status()),
    check: catalogue.check.handler(({ context, input }) => ({
      taskId: context.services.startCheck(input.mend),
    })),
    changes: catalogue.changes.handler(({ context, signal }) => context.services.changes.stream(signal)),
  },
  settings: {
    get: settings.get.handler(({ context }) => context.services.catalogue.settings.get()),
    set: settings.set.handler(({ context, input }) => context.services.setSettings(input)),
  },
  layouts: {
    own: layouts.own.handler(({ context }) => context.services.layouts.list()),
    save: layouts.save.handler(({ context, input }) => context.services.layouts.save(input)),
    remove: layouts.remove.handler(({ context, input }) => context.services.layouts.remove(input.id)),
  },
  jobs: {
    list: jobs.list.handler(({ context }) => context.services.catalogue.list()),
    create: jobs.create.handler(({ context, input }) => {
      requireSoundLayout(input.layout)
      return context.services.jobs.create(input)
    }),
    get: jobs.get.handler(({ context, input }) => context.services.jobs.get(input.id)),
    apply: jobs.apply.handler(({ context, input }) => context.services.jobs.apply(input.id, input.command)),
    undo: jobs.undo.handler(({ context, input }) => context.services.jobs.undo(input.id)),
    redo: jobs.redo.handler(({ context, input }) => context.services.jobs.redo(input.id)),
    duplicate: jobs.duplicate.handler(({ context, input }) => context.services.jobs.duplicate(input.id)),
    remove: jobs.remove.handler(async ({ context, input }) => {
      await context.services.jobs.remove(input.id)
      return input
    }),
    restore: jobs.restore.handler(({ context, input }) => context.services.jobs.restore(input.id)),
  },
  intake: {
    start: intake.start.handler(async ({ context, input }) => ({
      taskId: await context.services.startIntake(input),
    })),
  },
  tasks: {
    watch: tasks.watch.handler(({ context, input, signal }) =>
      context.services.tasks.watch(input.taskId, signal),
    ),
    cancel: tasks.cancel.handler(({ context, input }) => ({
      cancelled: context.services.tasks.cancel(input.taskId),
    })),
  },
  writeUp: {
    pdf: writeUp.pdf.handler(({ context, input }) =>
      context.services.writeUpPdf(input.jobId, input.audience),
    ),
  },
  recordings: {
    preview: recordings.preview.handler(({ context, input }) =>
      context.services.recordings.preview(input.source, input.test, input.written),
    ),
    analyse: recordings.analyse.handler(async ({ context, input }) => ({
      taskId: context.services.tasks.start(await context.services.recordings.analyse(input)),
    })),
    redraw: recordings.redraw.handler(async ({ context, input }) => ({
      taskId: context.services.tasks.start(
        await context.services.recordings.redraw(input.jobId, input.pullId),
      ),
    })),
    keep: recordings.keep.handler(async ({ context, input }) => ({
      recording: await context.services.recordings.keep(input.ref),
    })),
    discard: recordings.discard.handler(async ({ context, input }) => {
      await context.services.recordings.discard(input.ref)
      return {}
    }),
  },
  readingsCsv: {
    read: readingsCsv.read.handler(({ context, input }) =>
      readReadingsCsv(context.services.files, input.ref, input.separator),
    ),
  },
  demo: {
    load: demo.load.handler(({ context }) => ({ taskId: context.services.startDemo() })),
  },
})
