// Shown when the page was opened without its one-time link, or with one that was used already.
export function NoSession() {
  return (
    <main className="no-session">
      <h1>This link was used already</h1>
      <p>
        For safety a Plugtray link works once. Start Plugtray again, or open the newest link that it printed.
        Nothing was lost.
      </p>
    </main>
  )
}
