// Gathers a job into its write-up, for the shop with every reading, for the customer in plain words.
import type { UnitChoice } from '../contract/settings-schema.ts'
import { conditionMap } from '../diagnosis/condition-map.ts'
import { engineRemarks } from '../diagnosis/engine-remarks.ts'
import { judgeCompression } from '../gauges/compression.ts'
import { deference, gauges } from '../gauges/gauges.ts'
import { validPulls } from '../job/current.ts'
import type { Job } from '../job/job-schema.ts'
import { stagesOf } from '../job/stage.ts'
import { customerTables } from './customer-tables.ts'
import { factsOf } from './facts.ts'
import { measuredTables } from './measured-tables.ts'
import { notTested } from './not-tested.ts'
import { choosePhotos } from './photo-choice.ts'
import { customerLines, shopLines, summaryOf } from './plain-words.ts'
import { proofOf, proofTable } from './proof.ts'
import { readingsText } from './readings-text.ts'
import { wetFacts } from './verdict-words.ts'
import type { Audience, WriteUp, WriteUpTable } from './write-up.ts'

/** Everything the report says, as data. `shop` is the name on the letterhead, may be empty. */
export function writeUp(job: Job, units: UnitChoice, audience: Audience, shop = ''): WriteUp {
  const stage = 'as found'
  const states = conditionMap(job, stage, units)
  const verdicts = judgeCompression(job, stage, units)
  const forShop = audience === 'shop'
  const { cause = '', done: work = '' } = job.repair ?? {}
  return {
    audience,
    title: forShop ? 'Plug and cylinder report' : 'What we found on your engine',
    invented: job.demo === true,
    facts: factsOf(job, units, shop),
    complaint: job.complaint || 'No complaint is recorded.',
    summary: summaryOf(states),
    layout: job.layout,
    stage,
    states,
    findings: states.map(one => {
      const noted = forShop ? wetFacts(verdicts, one.cylinder) : []
      return {
        cylinder: one.cylinder,
        state: one.state,
        lines: forShop ? shopLines(one, noted) : customerLines(one),
        noted,
      }
    }),
    engine: engineRemarks(job, stage, units)
      .map(remark => (forShop ? `${remark.text} [${remark.source}]` : remark.plain))
      .filter(text => text !== ''),
    tables: tablesOf(job, units, audience),
    readings: stagesOf(job).flatMap(one => readingsText(job, one, units)),
    photos: choosePhotos(job, audience),
    cause,
    work,
    repair: [cause === '' ? '' : `Cause found: ${cause}`, work].filter(text => text !== ''),
    proof: proofOf(job, units),
    notTested: notTested(job),
    cautions: cautionsOf(job, audience),
    note: (forShop ? job.writeUp.noteForShop : job.writeUp.noteForCustomer) ?? '',
  }
}

function tablesOf(job: Job, units: UnitChoice, audience: Audience): WriteUpTable[] {
  const proof = proofTable(job, units)
  const measured =
    audience === 'shop'
      ? stagesOf(job).flatMap(stage => measuredTables(job, stage, units))
      : customerTables(job, units)
  return proof && audience === 'shop' ? [...measured, proof] : measured
}

/** For the shop those of the tests in this job; with none measured, of all. */
function cautionsOf(job: Job, audience: Audience): string[] {
  if (audience === 'customer')
    return [
      'Do not drive for long with a misfire: unburned fuel overheats the catalyst.',
      'Have any work on the engine done by a qualified person: ignition carries dangerous voltage, and fuel, hot and turning parts injure.',
    ]
  const done = gauges.filter(({ test }) =>
    stagesOf(job).some(stage => validPulls(job, test, stage).length > 0),
  )
  return [deference, ...new Set((done.length > 0 ? done : gauges).flatMap(gauge => gauge.cautions))]
}
