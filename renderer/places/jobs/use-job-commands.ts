// What can be done with a job from the list, for its menu and for right-click. What takes it out of sight can be undone.
import { useLocation } from 'wouter'
import type { JobSummary } from '../../../shared/contract/summary-schema.ts'
import { inWords } from '../../api/client.ts'
import { useJobActions } from '../../api/use-jobs.ts'
import { useStatus } from '../../api/use-settings.ts'
import type { MenuCommand } from '../../parts/menu.tsx'
import { useNotices } from '../../parts/notices.tsx'

export function useJobCommands(job: JobSummary, name: string): MenuCommand[] {
  const { duplicate, remove, restore, archive } = useJobActions()
  const { say, fail } = useNotices()
  const [, go] = useLocation()
  const isDisabled = useStatus()?.readOnly != null
  const onError = (error: unknown) => fail(inWords(error))
  return [
    { id: 'open', text: 'Open', run: () => go(`/job/${job.id}`) },
    {
      id: 'duplicate',
      text: 'New visit of this engine',
      isDisabled,
      run: () => duplicate.mutate(job.id, { onSuccess: state => go(`/job/${state.job.id}`), onError }),
    },
    {
      id: 'archive',
      text: job.archived ? 'Take out of the archive' : 'Archive',
      isDisabled,
      run: () =>
        archive.mutate(
          { id: job.id, archived: !job.archived },
          {
            onSuccess: () =>
              say(job.archived ? `${name} is open again.` : `${name} is archived.`, () =>
                archive.mutate({ id: job.id, archived: job.archived }, { onError }),
              ),
            onError,
          },
        ),
    },
    {
      id: 'delete',
      text: 'Delete',
      isDisabled,
      run: () =>
        remove.mutate(job.id, {
          onSuccess: () => say(`${name} is deleted.`, () => restore.mutate(job.id, { onError })),
          onError,
        }),
    },
  ]
}
