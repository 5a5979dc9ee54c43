// The text of a PDF in reading order, by a general-purpose PDF reader that is not the writer.
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

export async function pdfText(bytes: Uint8Array): Promise<string> {
  const task = getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 })
  const document = await task.promise
  const pages: string[] = []
  for (let at = 1; at <= document.numPages; at += 1) {
    const { items } = await (await document.getPage(at)).getTextContent()
    pages.push(items.map(item => ('str' in item ? `${item.str}${item.hasEOL ? '\n' : ''}` : '')).join(''))
  }
  await task.destroy()
  return pages.join('\n').replaceAll('\u00a0', ' ')
}
