// The tests of the whole engine that are entered in a short form.
import type { TestKind } from '../../../../../shared/job/pull-schema.ts'
import type { DefineEngineTest } from './engine-test.ts'
import { fuelPressureTest, trimsTest } from './fuel.ts'
import { mode06Test, troubleCodesTest } from './scan.ts'
import { swapTest } from './swap.ts'
import { vacuumTest } from './vacuum.ts'

export const engineTests: Partial<Record<TestKind, DefineEngineTest>> = {
  vacuum: vacuumTest,
  'fuel pressure': fuelPressureTest,
  trims: trimsTest,
  'trouble codes': troubleCodesTest,
  'mode 06': mode06Test,
  swap: swapTest,
}
