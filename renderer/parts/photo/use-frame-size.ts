// The size of an element in CSS pixels, kept up to date as the window changes.
import { type RefObject, useEffect, useState } from 'react'
import type { Size } from './view.ts'

export function useFrameSize(element: RefObject<HTMLElement | null>): Size {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 })
  useEffect(() => {
    const { current } = element
    if (!current) return undefined
    const watcher = new ResizeObserver(() =>
      setSize({ width: current.clientWidth, height: current.clientHeight }),
    )
    watcher.observe(current)
    return () => watcher.disconnect()
  }, [element])
  return size
}
