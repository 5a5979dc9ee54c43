// What the engine as a whole says: patterns of the trade that no single cylinder shows, each with where it was read.
import type { EngineRemark } from '../../../shared/diagnosis/engine-remarks.ts'

export function EngineRemarks({ remarks }: { remarks: readonly EngineRemark[] }) {
  return (
    <section className="deck-remarks" aria-label="The engine as a whole">
      <h2>The engine as a whole</h2>
      {remarks.length === 0 ? (
        <p className="quiet">Nothing stands out yet. Patterns across cylinders and banks gather here.</p>
      ) : (
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolls, so the keyboard must get there
        <ul tabIndex={0} aria-label="Remarks">
          {remarks.map(remark => (
            <li key={remark.kind + remark.text}>
              {remark.text}
              <small>{remark.source}</small>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
