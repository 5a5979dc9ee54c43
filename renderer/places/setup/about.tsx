// About the app: version, what it is not, and whose work it stands on.
import { licenceInWords, licences } from './licences.ts'

export function About({ version }: { version: string }) {
  return (
    <>
      <p>Plugtray {version}, MIT licence. Nothing leaves this computer unless you export it.</p>
      <p>
        It weighs what you record; it does not replace the vehicle’s service information, local rules or
        licensed practice.
      </p>
      <details className="licences">
        <summary>Open-source work it is built on</summary>
        <ul>
          {licences.map(one => (
            <li key={one.name}>
              <strong>{one.name}</strong>
              <span>{licenceInWords(one)}</span>
              <span className="quiet">{one.what}</span>
            </li>
          ))}
        </ul>
      </details>
    </>
  )
}
