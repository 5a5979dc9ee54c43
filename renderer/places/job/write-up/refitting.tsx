// When the plugs go back in: how tight, by thread, seat and head, with what to mind. The maker's own figure comes first.
import { useState } from 'react'
import {
  type Head,
  heads,
  type Seat,
  seats,
  toNewtonMetres,
  torqueRange,
  torqueSource,
  type TorqueThread,
  torqueThreads,
  turnsAfterFingerTight,
} from '../../../../shared/plug/torque.ts'
import { Segmented } from '../../../parts/segmented.tsx'

const options = <T extends string>(values: readonly T[]) => values.map(value => ({ value, text: value }))

export function Refitting() {
  const [thread, setThread] = useState<TorqueThread>('M14')
  const [seat, setSeat] = useState<Seat>('gasket')
  const [head, setHead] = useState<Head>('aluminium')
  const range = torqueRange(thread, seat, head)
  return (
    <details className="card refitting">
      <summary>Refitting the plugs: how tight</summary>
      <div className="row">
        <Segmented
          label="Thread"
          labelShown
          value={thread}
          options={options(torqueThreads)}
          onChange={setThread}
        />
        <Segmented label="Seat" labelShown value={seat} options={options(seats)} onChange={setSeat} />
        <Segmented label="Head" labelShown value={head} options={options(heads)} onChange={setHead} />
      </div>
      <p role="status">
        {range ? (
          <strong>
            {range[0]} to {range[1]}&nbsp;lbf&nbsp;ft ({toNewtonMetres(range[0]).toFixed(1)} to{' '}
            {toNewtonMetres(range[1]).toFixed(1)}&nbsp;N&nbsp;m)
          </strong>
        ) : (
          'The chart says nothing of this kind of plug: use the maker’s figure.'
        )}
      </p>
      <p className="quiet">
        Dry, clean threads, cold engine; the engine maker&rsquo;s figure wins. Without a wrench, after finger
        tight: new gasket {turnsAfterFingerTight['new gasket']}, used gasket{' '}
        {turnsAfterFingerTight['used gasket']}, conical seat {turnsAfterFingerTight.conical}. No compound on
        plated threads unless the maker asks for it: it raises the tension by 20 to 30 % at the same wrench
        setting. Source: {torqueSource}.
      </p>
      <p className="quiet">
        Never fit plugs into a hot aluminium head. Start them by hand, with the ignition off.
      </p>
    </details>
  )
}
