// Deposits of one plug: pairs of kind and place, since oil on the nose and oil on the outer body are different findings.
import { Plus, X } from 'lucide-react'
import { useState } from 'react'
import {
  type DepositKind,
  type DepositPlace,
  depositKinds,
  depositPlaces,
} from '../../../../shared/plug/condition.ts'

type Deposit = { kind: DepositKind; place: DepositPlace }
type DepositPickerProps = {
  deposits: readonly Deposit[]
  disabled: boolean
  onChange: (deposits: Deposit[]) => void
}

const same = (a: Deposit, b: Deposit) => a.kind === b.kind && a.place === b.place

export function DepositPicker({ deposits, disabled, onChange }: DepositPickerProps) {
  const [kind, setKind] = useState<DepositKind>('soot')
  const [place, setPlace] = useState<DepositPlace>('nose')
  const next = { kind, place }
  return (
    <div className="tag-group">
      <h4>Deposits</h4>
      <ul className="deposit-list">
        {deposits.map(deposit => (
          <li key={`${deposit.kind} ${deposit.place}`}>
            <span>
              {deposit.kind}, {deposit.place}
            </span>
            <button
              type="button"
              className="tag"
              aria-label={`Remove ${deposit.kind}, ${deposit.place}`}
              disabled={disabled}
              onClick={() => onChange(deposits.filter(one => !same(one, deposit)))}
            >
              <X aria-hidden="true" />
            </button>
          </li>
        ))}
      </ul>
      <div className="deposit-add">
        <label>
          Kind
          <select
            value={kind}
            disabled={disabled}
            onChange={event => setKind(depositKinds.find(one => one === event.target.value) ?? 'soot')}
          >
            {depositKinds.map(one => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
        <label>
          Place
          <select
            value={place}
            disabled={disabled}
            onChange={event => setPlace(depositPlaces.find(one => one === event.target.value) ?? 'nose')}
          >
            {depositPlaces.map(one => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
        <button
          type="button"
          className="tag"
          disabled={disabled || deposits.some(one => same(one, next))}
          onClick={() => onChange([...deposits, next])}
        >
          <Plus aria-hidden="true" /> Add deposit
        </button>
      </div>
    </div>
  )
}
