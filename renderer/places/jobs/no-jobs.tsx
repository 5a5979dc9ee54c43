// The empty job list: what belongs here, one button, and a way to look at something first.
import { Button } from '../../parts/button.tsx'
import { EmptyPlace } from '../../parts/empty-place.tsx'
import { DemoLoader } from './demo-loader.tsx'

export function NoJobs({ readOnly, onNew }: { readOnly: boolean; onNew: () => void }) {
  return (
    <EmptyPlace
      title="No jobs yet"
      text="A job is one engine on one visit: the complaint, the plugs in cylinder order, the gauge readings, the repair and its proof."
    >
      <Button kind="main" isDisabled={readOnly} onPress={onNew}>
        New job
      </Button>
      <DemoLoader />
    </EmptyPlace>
  )
}
