// A small picture of a photo. An empty `alt` says that the words beside it tell enough.
import { usePhoto } from '../../api/use-photo.ts'

export function Thumb({ photo, alt }: { photo: string; alt: string }) {
  const { url, error } = usePhoto(photo, 'thumb')
  if (error)
    return (
      <span className="thumb-problem" title={error}>
        photo not available
      </span>
    )
  return url ? (
    <img src={url} alt={alt} draggable={false} />
  ) : (
    <span className="thumb-loading" aria-hidden="true" />
  )
}
