// Every finding of the evidence model, by its id.
import { engineFindings } from './engine-findings.ts'
import type { Finding } from './finding.ts'
import { noticedFindings } from './noticed-findings.ts'
import { plugFindings } from './plug-findings.ts'
import { resistanceFindings } from './resistance-findings.ts'
import { sealingFindings } from './sealing-findings.ts'
import { workingFindings } from './working-findings.ts'

export const findings: readonly Finding[] = [
  ...sealingFindings,
  ...workingFindings,
  ...resistanceFindings,
  ...plugFindings,
  ...engineFindings,
  ...noticedFindings,
]

const byId = new Map(findings.map(one => [one.id, one]))

export const findingById = (id: string): Finding | undefined => byId.get(id)
