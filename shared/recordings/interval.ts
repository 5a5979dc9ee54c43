// Half width of a 95 % interval from a standard error: Student's distribution.

/** Two-sided 95 % points of Student's t; source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2. */
const points = [
  12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145, 2.131,
  2.12, 2.11, 2.101, 2.093, 2.086, 2.08, 2.074, 2.069, 2.064, 2.06, 2.056, 2.052, 2.048, 2.045, 2.042,
] as const

/** @param freedom degrees of freedom, from 1 */
export const halfWidth = (standardError: number, freedom: number): number =>
  standardError * (points[Math.floor(freedom) - 1] ?? 1.96 + 2.4 / freedom)
