// Wheel, drag, pinch, double click and keys, turned into views of a photo.
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef } from 'react'
import { clampView, fitView, oneToOneZoom, panBy, type Point, type Size, type View, zoomAt } from './view.ts'

type Gestures = {
  frame: RefObject<HTMLElement | null>
  frameSize: Size
  picture: Size
  view: View
  onView: (view: View) => void
}

const keyPan = 60
const keyZoom = 1.25

export function useViewGestures({ frame, frameSize, picture, view, onView }: Gestures) {
  const pointers = useRef(new Map<number, Point>())
  // The wheel listener is attached once; it reads the newest values from here.
  const latest = useRef({ view, picture, frameSize, onView })
  useEffect(() => {
    latest.current = { view, picture, frameSize, onView }
  })

  const pointIn = (x: number, y: number): Point => {
    const box = frame.current?.getBoundingClientRect()
    return { x: x - (box?.left ?? 0), y: y - (box?.top ?? 0) }
  }

  useEffect(() => {
    const { current } = frame
    if (!current) return undefined
    // React attaches wheel listeners as passive; zooming must keep the page from scrolling.
    const onWheel = (event: WheelEvent) => {
      event.preventDefault()
      const now = latest.current
      const box = current.getBoundingClientRect()
      const factor = Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0016))
      const at = { x: event.clientX - box.left, y: event.clientY - box.top }
      now.onView(zoomAt(now.view, factor, at, now.picture, now.frameSize))
    }
    current.addEventListener('wheel', onWheel, { passive: false })
    return () => current.removeEventListener('wheel', onWheel)
  }, [frame])

  const centre = { x: frameSize.width / 2, y: frameSize.height / 2 }
  const toggleOneToOne = (at: Point) => {
    const target = oneToOneZoom(picture, frameSize, window.devicePixelRatio)
    const near = Math.abs(view.zoom / target - 1) < 0.01
    onView(near ? fitView : zoomAt(view, target / view.zoom, at, picture, frameSize))
  }

  const onPointerDown = (event: PointerEvent) => {
    if (event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    pointers.current.set(event.pointerId, pointIn(event.clientX, event.clientY))
  }
  const onPointerMove = (event: PointerEvent) => {
    const before = pointers.current.get(event.pointerId)
    if (!before) return
    const now = pointIn(event.clientX, event.clientY)
    const other = [...pointers.current].find(([id]) => id !== event.pointerId)?.[1]
    pointers.current.set(event.pointerId, now)
    if (!other) {
      onView(panBy(view, { x: now.x - before.x, y: now.y - before.y }, picture, frameSize))
      return
    }
    const spread = (point: Point) => Math.hypot(point.x - other.x, point.y - other.y)
    const middle = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 }
    if (spread(before) > 0) onView(zoomAt(view, spread(now) / spread(before), middle, picture, frameSize))
  }
  const onPointerUp = (event: PointerEvent) => pointers.current.delete(event.pointerId)

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const next = viewForKey(event.key)
    if (!next) return
    event.preventDefault()
    event.stopPropagation()
    onView(next)
  }
  const viewForKey = (key: string): View | undefined => {
    const pan = (x: number, y: number) => panBy(view, { x, y }, picture, frameSize)
    const zoom = (factor: number) => zoomAt(view, factor, centre, picture, frameSize)
    if (key === '+' || key === '=') return zoom(keyZoom)
    if (key === '-') return zoom(1 / keyZoom)
    if (key === '0') return fitView
    if (key === '1')
      return clampView(
        { ...view, zoom: oneToOneZoom(picture, frameSize, window.devicePixelRatio) },
        picture,
        frameSize,
      )
    if (view.zoom <= 1) return undefined
    if (key === 'ArrowLeft') return pan(keyPan, 0)
    if (key === 'ArrowRight') return pan(-keyPan, 0)
    if (key === 'ArrowUp') return pan(0, keyPan)
    if (key === 'ArrowDown') return pan(0, -keyPan)
    return undefined
  }

  return {
    onPointerDown,
    onPointerMove,
    onPointerUp,
    onPointerCancel: onPointerUp,
    onDoubleClick: (event: { clientX: number; clientY: number }) =>
      toggleOneToOne(pointIn(event.clientX, event.clientY)),
    onKeyDown,
    zoomBy: (factor: number) => onView(zoomAt(view, factor, centre, picture, frameSize)),
    toggleOneToOne: () => toggleOneToOne(centre),
  }
}
