// The published texts that the gauge rules were read in, named as a reader could find them.

export const sources = {
  practice: 'common practice',
  typed: 'specification typed for this vehicle',
  floor: 'General Motors compression test pages (1990-2009)',
  wet: 'US Army TM 5-4210-230-14&P-1, Addendum 2; General Motors and Ford compression pages; oil volume: calculated',
  repeat: 'common practice; the figure is from memory, no published text found',
  firstPuff: 'common practice, no published text found',
  seaLevel: 'pressure ratio by US Standard Atmosphere 1976: calculated',
  estimate:
    'estimate: polytropic compression (textbook; exponent from memory) and a public rule of thumb, which disagree',
  hose: 'common practice, no published text found; hose volume: our own simple model',
  sequence: "common practice: charged battery; the order is tested by Kendall's rank test",
  puffs: 'US Army TM 5-4210-230-14&P-1, Addendum 2; Ford compression gauge check (2010)',
  hole: 'estimate: isentropic flow through two orifices in series, calculated; FAA AC 43.13-1B names the orifices',
  leakPractice: 'common practice; FAA AC 43.13-1B, para 8-14',
  leakPaths:
    'Dodge cylinder leakage pages (2002); Mazda cylinder leakage page (2008); aviation trade articles on differential compression',
  running: 'common practice; the figures are from memory, no published text found',
  balance: 'common practice; technician certification study pages',
  idle: 'common practice at sea level; altitude: US Army TM 9-4910-677-14&P and US Standard Atmosphere 1976',
  fast: 'common practice; hand vacuum pump manual (MV8500)',
  snap: 'common practice; US Army TM 9-4910-677-14&P; technician certification study pages',
  cranking: 'common practice; altitude by pressure ratio: calculated',
  physics: 'physics: a vacuum cannot exceed the air pressure',
} as const
