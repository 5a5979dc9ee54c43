// The test last looked at in each job of this window: coming back to the gauges finds it open.
import type { TestKind } from '../../../../shared/job/pull-schema.ts'

const tests = new Map<string, TestKind>()

export const rememberedTest = (jobId: string): TestKind => tests.get(jobId) ?? 'compression'

export function rememberTest(jobId: string, test: TestKind): void {
  tests.set(jobId, test)
}
