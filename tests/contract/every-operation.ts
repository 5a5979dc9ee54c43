// Which operations of the contract a suite has called, so that none is left out by accident.
import type { Api } from './hosts.ts'

/** The same client; each call is written down as "jobs.apply". */
export function recordCalls(api: Api, calls: Set<string>): Api {
  const wrap = (target: object, path: string[]): unknown =>
    new Proxy(target, {
      get(from, name) {
        const inside: unknown = Reflect.get(from, name)
        if (typeof name !== 'string' || (typeof inside !== 'object' && typeof inside !== 'function'))
          return inside
        return inside === null ? inside : wrap(inside, [...path, name])
      },
      apply(from, self, args) {
        calls.add(path.join('.'))
        return typeof from === 'function' ? Reflect.apply(from, self, args) : undefined
      },
    })
  return wrap(api, []) as Api
}

/** Names of all operations: the leaves of the contract. */
export function operationsOf(contract: object, path: string[] = []): string[] {
  return Object.entries(contract).flatMap(([name, inside]: [string, object]) =>
    '~orpc' in inside ? [[...path, name].join('.')] : operationsOf(inside, [...path, name]),
  )
}
