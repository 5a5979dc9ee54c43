// Units and scalings of service 06: what one step of a raw value is worth. Ids above 7F mean signed values.

export type Scaling = { unit: string; perBit: number; offset: number; digits: number }

/**
 * SAE J1979 / ISO 15031-5 as restated in service information: 24. Seen in public captures: 30 (100/65535) and 0A. From
 * memory: 01, 0B, 10, 16, 81. The paid standard was not opened; an id that is not here is shown as it came.
 */
const scalings: Readonly<Record<number, Scaling>> = {
  0x01: { unit: 'raw', perBit: 1, offset: 0, digits: 0 },
  0x0a: { unit: 'mV', perBit: 0.122, offset: 0, digits: 1 },
  0x0b: { unit: 'V', perBit: 0.001, offset: 0, digits: 3 },
  0x10: { unit: 's', perBit: 0.001, offset: 0, digits: 3 },
  0x16: { unit: '°C', perBit: 0.1, offset: -40, digits: 1 },
  0x24: { unit: 'counts', perBit: 1, offset: 0, digits: 0 },
  0x30: { unit: '%', perBit: 0.001526, offset: 0, digits: 2 },
  0x81: { unit: 'raw', perBit: 1, offset: 0, digits: 0 },
}

const asItCame: Scaling = { unit: 'raw', perBit: 1, offset: 0, digits: 0 }

export const isSigned = (id: number): boolean => id > 0x7f
export const isKnownScaling = (id: number): boolean => scalings[id] !== undefined
export const scalingOf = (id: number): Scaling => scalings[id] ?? asItCame

/** Sixteen bits as the number they stand for: two's complement where the id says signed. */
export const signedOf = (raw: number, id: number): number =>
  isSigned(id) && raw > 0x7fff ? raw - 0x10000 : raw

/** In the scaling's unit, to a millionth. */
export function scaled(raw: number, id: number): number {
  const { perBit, offset } = scalingOf(id)
  return Number((signedOf(raw, id) * perBit + offset).toFixed(6))
}
