// A picture this app does not take in, and the one line a person reads about it: what it is, and what to do.

export class RefusedPicture extends Error {
  readonly why: string
  constructor(why: string) {
    super(why)
    this.name = 'RefusedPicture'
    this.why = why
  }
}
