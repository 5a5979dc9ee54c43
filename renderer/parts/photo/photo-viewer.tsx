// One big photo with zoom, pan, fit and 1:1, by wheel, drag, pinch, double click or keys.
import { Maximize2, Minus, Plus } from 'lucide-react'
import { useRef } from 'react'
import { usePhoto } from '../../api/use-photo.ts'
import { IconButton } from '../icon-button.tsx'
import './photo-viewer.css'
import { useFrameSize } from './use-frame-size.ts'
import { useViewGestures } from './use-view-gestures.ts'
import { clampView, fitView, percentShown, placement, type View } from './view.ts'

type PhotoViewerProps = {
  /** SHA-256 of the original. */
  photo: string
  width: number
  height: number
  /** Spoken name, e.g. "cylinder 3, end-on, as found". */
  alt: string
  view: View
  onView: (view: View) => void
}

export function PhotoViewer({ photo, width, height, alt, view, onView }: PhotoViewerProps) {
  const frame = useRef<HTMLDivElement>(null)
  const frameSize = useFrameSize(frame)
  const picture = { width, height }
  const shown = clampView(view, picture, frameSize)
  const gestures = useViewGestures({ frame, frameSize, picture, view: shown, onView })
  const ratio = window.devicePixelRatio
  const percent = percentShown(shown, picture, frameSize, ratio)
  const place = placement(shown, picture, frameSize)
  // The screen size is enough until one of its pixels would cover more than one device pixel.
  const needsFull = place.width * ratio > 1600 || place.height * ratio > 1600
  const screen = usePhoto(photo, 'screen')
  const full = usePhoto(needsFull ? photo : undefined, 'full')
  const source = full.url ?? screen.url
  const problem = full.error ?? screen.error

  return (
    <figure className="photo-viewer">
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- worked by zoom and arrow keys */}
      <div
        ref={frame}
        className="photo-frame"
        role="application"
        aria-roledescription="zoomable photo"
        aria-label={`${alt}. Plus and minus zoom, 0 fits, 1 shows every pixel, arrows move.`}
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- as above
        tabIndex={0}
        onPointerDown={gestures.onPointerDown}
        onPointerMove={gestures.onPointerMove}
        onPointerUp={gestures.onPointerUp}
        onPointerCancel={gestures.onPointerCancel}
        onDoubleClick={gestures.onDoubleClick}
        onKeyDown={gestures.onKeyDown}
      >
        {source && frameSize.width > 0 && (
          <img
            src={source}
            alt={alt}
            draggable={false}
            style={{ left: place.left, top: place.top, width: place.width, height: place.height }}
          />
        )}
        {problem && (
          <p className="photo-problem" role="alert">
            {problem}
          </p>
        )}
      </div>
      <figcaption className="photo-tools">
        <IconButton label="Zoom out (-)" onPress={() => gestures.zoomBy(0.8)}>
          <Minus />
        </IconButton>
        <output className="photo-percent">{percent} %</output>
        <IconButton label="Zoom in (+)" onPress={() => gestures.zoomBy(1.25)}>
          <Plus />
        </IconButton>
        <IconButton label="Fit (0)" onPress={() => onView(fitView)}>
          <Maximize2 />
        </IconButton>
        <IconButton label="1:1, every pixel (key 1)" onPress={gestures.toggleOneToOne}>
          <span aria-hidden="true">1:1</span>
        </IconButton>
      </figcaption>
    </figure>
  )
}
