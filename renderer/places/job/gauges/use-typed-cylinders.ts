// What is being typed in a test made cylinder by cylinder, shared by the grid and the guided walk, and how it is kept.
import { useState } from 'react'
import type { Pull } from '../../../../shared/job/pull-schema.ts'
import { conditionsOf } from '../../../../shared/job/current.ts'
import { useNotices } from '../../../parts/notices.tsx'
import { useJobPage } from '../job-context.ts'
import type { CylinderTest } from './cylinder-tests/cylinder-test.ts'
import { type Field, isWrong, type Typed } from './entry/field.ts'

export type TypedCylinders = {
  test: CylinderTest
  settings: Typed
  set: (name: string, text: string) => void
  /** The columns in sight. */
  columns: readonly Field[]
  hasMore: boolean
  more: boolean
  setMore: (more: boolean) => void
  row: (cylinder: number) => Typed
  type: (cylinder: number, name: string, text: string) => void
  /** Keeps the row as a pull when it is complete; whether it was. */
  keep: (cylinder: number) => boolean
}

const nothing: Typed = {}

export function useTypedCylinders(test: CylinderTest, instrument: string | undefined): TypedCylinders {
  const { job, tray, apply } = useJobPage()
  const { say } = useNotices()
  const [rows, setRows] = useState<Readonly<Record<number, Typed>>>({})
  const [settings, setSettings] = useState<Typed>(test.initial)
  const [more, setMore] = useState(false)
  const all = test.columns(settings)
  const columns = all.filter(column => more || !column.more)

  const send = async (pull: Pull, typed: Typed) => {
    const isDone = await apply({ command: 'add pull', pull })
    const question = test.ask?.(pull)
    if (!isDone && 'cylinder' in pull) setRows(now => ({ ...now, [pull.cylinder]: typed }))
    else if (isDone && question) say(question)
  }

  const keep = (cylinder: number): boolean => {
    const typed = rows[cylinder] ?? nothing
    const row = Object.fromEntries(columns.map(({ name }) => [name, typed[name] ?? '']))
    if (
      columns.some(column => isWrong(column, row[column.name])) ||
      test.settings.some(field => isWrong(field, settings[field.name]))
    )
      return false
    const base = {
      id: crypto.randomUUID(),
      stage: tray.stage,
      cylinder,
      at: new Date().toISOString(),
      ...(instrument === undefined ? {} : { instrument }),
    }
    const pull = test.pull(row, base, settings, conditionsOf(job, test.test, tray.stage))
    if (typeof pull === 'string') say(pull)
    if (!pull || typeof pull === 'string') return false
    // The row is free at once: the next number may be typed before this one is on disk.
    setRows(now => ({ ...now, [cylinder]: nothing }))
    void send(pull, typed)
    return true
  }

  return {
    test,
    settings,
    set: (name, text) => setSettings(now => ({ ...now, [name]: text })),
    columns,
    hasMore: all.some(column => column.more),
    more,
    setMore,
    row: cylinder => rows[cylinder] ?? nothing,
    type: (cylinder, name, text) =>
      setRows(now => ({ ...now, [cylinder]: { ...now[cylinder], [name]: text } })),
    keep,
  }
}
