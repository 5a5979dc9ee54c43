// Trouble codes out of what was typed or pasted: separated by blanks, commas or lines, small letters too.

const shape = /^[PCBU][0-9A-F]{4}$/
const most = 64

/** Each code once, in the order given; null when a word that looks like none stands among them. */
export function readCodes(text: string): string[] | null {
  const words = text
    .toUpperCase()
    .split(/[\s,;]+/)
    .filter(word => word !== '')
  const codes = [...new Set(words)]
  return codes.length > 0 && codes.length <= most && codes.every(word => shape.test(word)) ? codes : null
}
