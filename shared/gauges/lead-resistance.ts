// Leads: no limit holds for all, so each stands against published limits that differ, by length and against its sisters.
import { withUnit } from '../units/format.ts'
import { againstMaximum } from './calling.ts'
import { median } from './middle.ts'
import { ohmsShown, ohmsWords } from './ohms.ts'
import type { ReadResistance } from './resistance-values.ts'
import { round } from './shown.ts'
import type { CylinderVerdict } from './verdict.ts'

/** Published limits contradict each other; twice the middle of the sisters is ours. */
const leadRules = {
  badOhms: 30_000,
  mostOhmsPerFoot: 12_000,
  usualOhmsPerFoot: { from: 5000, to: 10_000 },
  usualOhms: { from: 1500, to: 3500 },
  sisterTimes: 2,
} as const

const source = 'articles on plug wires, which differ from text to text'

export const judgeLeads = (
  leads: readonly ReadResistance[],
  stage: CylinderVerdict['stage'],
): CylinderVerdict[] =>
  leads.flatMap(lead => [
    inAll(lead, stage),
    ...perFoot(lead, stage),
    ...besideSisters(
      lead,
      leads.filter(other => other.cylinder !== lead.cylinder),
      stage,
    ),
  ])

const base = (rule: string, lead: ReadResistance, stage: CylinderVerdict['stage']) =>
  ({ test: 'resistance', rule, cylinder: lead.cylinder, stage, source }) as const

function inAll(lead: ReadResistance, stage: CylinderVerdict['stage']): CylinderVerdict {
  const call = againstMaximum(lead.ohms, lead.plusMinus, leadRules.badOhms)
  const { from, to } = leadRules.usualOhms
  return {
    ...base('lead in all', lead, stage),
    ...ohmsShown(lead.ohms, lead.plusMinus),
    verdict: call === 'within' ? 'noted' : call,
    limit: `over ${ohmsWords(leadRules.badOhms)} is bad in two texts, a third wants ${ohmsWords(from)} to ${ohmsWords(to)}; no limit holds for every lead`,
    why: `${ohmsWords(lead.ohms)}${
      call === 'outside'
        ? ': more than any of the texts allows, whatever its length.'
        : call === 'within'
          ? ', under what two texts call bad. That alone does not make it good: length and sisters tell.'
          : ': too near for this meter. Bend and tug the lead while it reads.'
    }`,
  }
}

function perFoot(lead: ReadResistance, stage: CylinderVerdict['stage']): CylinderVerdict[] {
  const { feet } = lead
  if (feet === undefined || feet <= 0) return []
  const each = lead.ohms / feet
  const doubt = lead.plusMinus / feet
  const call = againstMaximum(each, doubt, leadRules.mostOhmsPerFoot)
  const { from, to } = leadRules.usualOhmsPerFoot
  const over = againstMaximum(each, doubt, to) !== 'within'
  const shown = ohmsShown(each, doubt)
  return [
    {
      ...base('lead by length', lead, stage),
      ...shown,
      unit: `${shown.unit} a foot`,
      verdict: call === 'within' && over ? 'watch' : call,
      limit: `at most ${ohmsWords(leadRules.mostOhmsPerFoot)} a foot in one text, ${ohmsWords(from)} to ${ohmsWords(to)} in another`,
      why: `${ohmsWords(each)} a foot over ${withUnit(String(round(feet, 2)), 'ft')}: ${
        call === 'outside'
          ? 'over both texts.'
          : call === 'cannot be called'
            ? 'too near the limit for this meter.'
            : over
              ? 'over the stricter text or too near to tell, under the other.'
              : 'under both texts.'
      }`,
    },
  ]
}

/** By length where every lead has one, else as they are. */
function besideSisters(
  lead: ReadResistance,
  others: readonly ReadResistance[],
  stage: CylinderVerdict['stage'],
): CylinderVerdict[] {
  if (others.length === 0) return []
  const byLength = [lead, ...others].every(one => one.feet !== undefined && one.feet > 0)
  const over = (one: ReadResistance) => (byLength ? (one.feet ?? 1) : 1)
  const usual = median(others.map(one => one.ohms / over(one)))
  const own = lead.ohms / over(lead)
  const stands = usual > 0 && own > leadRules.sisterTimes * usual
  const shown = ohmsShown(own, lead.plusMinus / over(lead))
  const foot = byLength ? ' a foot' : ''
  return [
    {
      ...base('lead beside its sisters', lead, stage),
      ...shown,
      unit: `${shown.unit}${foot}`,
      verdict: stands ? 'watch' : 'within',
      limit: `at most twice the middle of its sisters${byLength ? ' by length' : ''}, which is our figure`,
      why: `${ohmsWords(own)}${foot} beside a middle of ${ohmsWords(usual)}${foot}${
        byLength ? '.' : '; give the lengths, for a longer lead reads more.'
      }${stands ? ' It stands out: look at its ends and bend it while it reads.' : ''}`,
      source: 'common practice',
    },
  ]
}
