// The tests that are entered cylinder by cylinder.
import type { TestKind } from '../../../../../shared/job/pull-schema.ts'
import { balanceTest } from './balance.ts'
import { compressionTest } from './compression.ts'
import type { DefineCylinderTest } from './cylinder-test.ts'
import { injectorBalanceTest, injectorTest, misfireCountsTest } from './fuel.ts'
import { resistanceTest, sparkTest } from './ignition.ts'
import { leakDownTest } from './leak-down.ts'
import { runningCompressionTest } from './running-compression.ts'

export const cylinderTests: Partial<Record<TestKind, DefineCylinderTest>> = {
  balance: balanceTest,
  compression: compressionTest,
  'running compression': runningCompressionTest,
  'leak-down': leakDownTest,
  spark: sparkTest,
  resistance: resistanceTest,
  'injector balance': injectorBalanceTest,
  injector: injectorTest,
  'misfire counts': misfireCountsTest,
}
