// The state behind the job page: tray, selection, order, and sending commands; with the keys that work anywhere on it.
import { useEffect, useMemo, useState } from 'react'
import { useLocation } from 'wouter'
import { conditionMap } from '../../../shared/diagnosis/condition-map.ts'
import { sameSlot } from '../../../shared/engine/slots.ts'
import type { Command, SlotAddress } from '../../../shared/job/command-schema.ts'
import { slotOrder } from '../../../shared/job/fill-plan.ts'
import type { Job } from '../../../shared/job/job-schema.ts'
import { inWords } from '../../api/client.ts'
import { useJobChange } from '../../api/use-jobs.ts'
import { useStatus, useUnits } from '../../api/use-settings.ts'
import { useKeys } from '../../keys/use-keys.ts'
import { useNotices } from '../../parts/notices.tsx'
import type { JobPage, SelectHow } from './job-context.ts'
import { rememberedView, rememberView } from './remembered-view.ts'

export function useJobPageState(job: Job): JobPage {
  const [trayId, setTray] = useState(() => rememberedView(job.id)?.trayId ?? job.trays[0]?.id ?? '')
  const [selected, setSelected] = useState<readonly SlotAddress[]>(
    () => rememberedView(job.id)?.selected ?? [],
  )
  const [orderName, setOrderName] = useState(() => rememberedView(job.id)?.orderName ?? 'cylinder')
  useEffect(
    () => rememberView(job.id, { trayId, selected, orderName }),
    [job.id, trayId, selected, orderName],
  )
  const change = useJobChange(job.id)
  const { fail } = useNotices()
  const units = useUnits()
  const readOnly = useStatus()?.readOnly != null
  const [, go] = useLocation()
  const { mutateAsync } = change

  const tray = job.trays.find(one => one.id === trayId) ?? job.trays[0]
  if (!tray) throw new Error('a job has at least one tray')
  const states = useMemo(() => conditionMap(job, tray.stage, units), [job, tray.stage, units])
  const order = useMemo(() => slotOrder(job.layout, orderName), [job.layout, orderName])

  const select = (slot: SlotAddress, how: SelectHow) =>
    setSelected(now => {
      const address: SlotAddress = slot.plug
        ? { cylinder: slot.cylinder, plug: slot.plug }
        : { cylinder: slot.cylinder }
      const has = now.some(one => sameSlot(one, address))
      if (how === 'only') return [address]
      if (how === 'toggle') return has ? now.filter(one => !sameSlot(one, address)) : [...now, address]
      const first = now[0] ?? address
      const [from, to] = [first, address]
        .map(one => order.findIndex(other => sameSlot(other, one)))
        .toSorted((a, b) => a - b)
      const range = order
        .slice(from, (to ?? 0) + 1)
        .filter(one => !sameSlot(one, first) && !sameSlot(one, address))
      return sameSlot(first, address) ? [address] : [first, ...range, address]
    })
  // Selected plugs that a change of layout took away are no longer selected.
  const standing = selected.filter(one => order.some(other => sameSlot(one, other)))

  const apply = async (command: Command): Promise<boolean> => {
    try {
      await mutateAsync({ kind: 'apply', command })
      return true
    } catch (error) {
      fail(`Not saved. ${inWords(error)}`)
      return false
    }
  }

  const step = (kind: 'undo' | 'redo') => {
    if (!readOnly) mutateAsync({ kind }).catch((error: unknown) => fail(inWords(error)))
  }
  const goTo = (tab: string) => () => go(`/job/${job.id}/${tab}`)
  useKeys('job', {
    undo: () => step('undo'),
    redo: () => step('redo'),
    plugs: goTo('plugs'),
    gauges: goTo('gauges'),
    causes: goTo('causes'),
    'write-up': goTo('write-up'),
  })

  return {
    job,
    tray,
    setTray,
    states,
    selected: standing,
    select,
    order,
    orderName,
    setOrderName,
    apply,
    readOnly,
  }
}
