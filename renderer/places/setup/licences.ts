// The open-source work that the app is built of and runs with, for the notice in Setup. A test compares it with what is
// installed.

export type Licence = { name: string; licence: string; what: string }

export const licences: readonly Licence[] = [
  { name: 'electron', licence: 'MIT', what: 'the desktop window' },
  { name: 'react', licence: 'MIT', what: 'the page' },
  { name: 'react-dom', licence: 'MIT', what: 'the page' },
  { name: 'react-aria-components', licence: 'Apache-2.0', what: 'menus, dialogs, choices' },
  { name: '@tanstack/react-query', licence: 'MIT', what: 'keeping the page up to date' },
  { name: '@tanstack/react-virtual', licence: 'MIT', what: 'long lists' },
  { name: 'wouter', licence: 'Unlicense', what: 'addresses within the page' },
  { name: 'lucide-react', licence: 'ISC', what: 'icons' },
  { name: '@orpc/client', licence: 'MIT', what: 'asking the host' },
  { name: '@orpc/contract', licence: 'MIT', what: 'asking the host' },
  { name: '@orpc/server', licence: 'MIT', what: 'answering the page' },
  { name: 'zod', licence: 'MIT', what: 'checking documents and requests' },
  { name: 'lowdb', licence: 'MIT', what: 'job documents' },
  { name: 'sharp', licence: 'Apache-2.0', what: 'photos; with libvips, LGPL-3.0-or-later' },
  { name: 'exifreader', licence: 'MPL-2.0', what: 'capture times' },
  { name: 'heic-decode', licence: 'ISC', what: 'HEIC photos' },
  { name: 'libheif-js', licence: 'LGPL-3.0', what: 'HEIC photos' },
  { name: 'csv-parse', licence: 'MIT', what: 'readings from a table' },
  { name: 'ml-matrix', licence: 'MIT', what: 'least squares in recordings' },
  { name: 'pdfkit', licence: 'MIT', what: 'reports' },
  { name: 'dejavu-fonts-ttf', licence: 'SEE LICENSE IN README.md AND LICENSE', what: 'fonts in reports' },
]

/** As shown: the fonts' own licence has no short name in its package. */
export const licenceInWords = ({ licence }: Licence): string =>
  licence.startsWith('SEE LICENSE') ? 'Bitstream Vera and Arev fonts licence' : licence
