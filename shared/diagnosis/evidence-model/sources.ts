// Texts behind the evidence model, named once. Each gives the direction of an effect; none gives how often.
export const texts = {
  compression: 'US Army TM 5-4210-230-14&P-1; General Motors and Ford compression test pages',
  firstPuff: 'General Motors compression test pages (builds up with rings, not with valves)',
  leakDown: 'Dodge 2002 and Mazda 2008 cylinder leakage pages',
  balance: 'technician-certification study pages (power balance)',
  plugs: 'US Army TM 5-4210-230-14&P-1, TM 10-3930-653-14&P and TM 10-3930-633-12; Dodge 1998 plug page',
  leanMisfire: 'FAA-H-8083-32 (unburned charge leaves carbon when a lean mixture misfires)',
  rust: 'Dodge 1998 plug page (manganese additive) against a 2016 plug condition table (iron oxide, antifreeze)',
  well: 'General Motors 2000 visual diagnosis page',
  needle: 'US Army OD1001 lesson 3; US Army TM 9-4910-677-14&P; older workshop vacuum charts',
  pump: 'hand vacuum pump manual (MV8500)',
  trims: 'technical articles and study pages on fuel trims',
  overall: 'US Army OD1001 lesson 3; technician-certification study pages',
  injectors: 'General Motors injector balance test pages',
  crossfire: 'US Army TM 5-4210-230-14&P-1 (routing of plug wires)',
  insulation: 'Toyota and Lexus spark plug inspection pages 2005-2006',
  sparks: 'technical articles on spark testers and plug wires',
} as const
