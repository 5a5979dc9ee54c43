// Each condition has one key of its own, and no key means two things.
import { expect, it } from 'vitest'
import { conditions } from '../../../../shared/plug/condition.ts'
import { conditionForKey, conditionKeys, oilInWellKey } from './condition-keys.ts'

it('gives every condition its own key', () => {
  const keys = [...conditions.map(condition => conditionKeys[condition]), oilInWellKey]
  expect(new Set(keys).size).toBe(keys.length)
  for (const condition of conditions)
    expect(conditionForKey(conditionKeys[condition].toUpperCase())).toBe(condition)
  expect(conditionForKey('z')).toBeUndefined()
})
