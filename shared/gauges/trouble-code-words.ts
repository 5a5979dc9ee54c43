// The misfire codes and the cylinder each names.

/**
 * P0300 is random or several cylinders; P0301 upward name one. P0301 to P0304 as worded in misfire monitor descriptions
 * (Toyota 2004, Volvo 2009); the rest of the series from memory of SAE J2012, which was not opened.
 */
export const misfireCodes: Readonly<Record<string, { cylinder: number | null }>> = {
  P0300: { cylinder: null },
  P0301: { cylinder: 1 },
  P0302: { cylinder: 2 },
  P0303: { cylinder: 3 },
  P0304: { cylinder: 4 },
  P0305: { cylinder: 5 },
  P0306: { cylinder: 6 },
  P0307: { cylinder: 7 },
  P0308: { cylinder: 8 },
  P0309: { cylinder: 9 },
  P0310: { cylinder: 10 },
  P0311: { cylinder: 11 },
  P0312: { cylinder: 12 },
}
