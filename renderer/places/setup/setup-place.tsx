// Setup: units, looks, names, own layouts, the catalogue and its check. Everything applies at once.
import type { ReactNode } from 'react'
import type { Settings, UnitChoice } from '../../../shared/contract/settings-schema.ts'
import { inWords } from '../../api/client.ts'
import {
  useLayoutActions,
  useOwnLayouts,
  useSetSettings,
  useSettings,
  useStatus,
} from '../../api/use-settings.ts'
import { Button } from '../../parts/button.tsx'
import { useNotices } from '../../parts/notices.tsx'
import { Segmented } from '../../parts/segmented.tsx'
import { usePageTitle } from '../../parts/use-page-title.ts'
import { DemoLoader } from '../jobs/demo-loader.tsx'
import { About } from './about.tsx'
import { CatalogueCheck } from './catalogue-check.tsx'
import { RuleChoices } from './rule-choices.tsx'
import './setup-place.css'

const units = {
  pressure: ['psi', 'kPa', 'bar'],
  vacuum: ['inHg', 'kPa'],
  length: ['mm', 'in'],
  temperature: ['°C', '°F'],
  altitude: ['m', 'ft'],
  distance: ['km', 'mi', 'h'],
} as const satisfies { [K in keyof UnitChoice]: readonly UnitChoice[K][] }

type ChoiceProps<T extends string> = {
  label: string
  value: T
  options: readonly T[]
  onChange: (value: T) => void
}

const Choice = <T extends string>({ label, value, options, onChange }: ChoiceProps<T>) => (
  <Segmented
    label={label}
    labelShown
    value={value}
    options={options.map(one => ({ value: one, text: one }))}
    onChange={onChange}
  />
)

const Section = ({ title, children }: { title: string; children: ReactNode }) => (
  <section className="setup-section" aria-label={title}>
    <h2>{title}</h2>
    <div className="setup-fields">{children}</div>
  </section>
)

export function SetupPlace() {
  const settings = useSettings()
  const status = useStatus()
  usePageTitle('Setup')
  if (!settings || !status) return <main className="setup-place" aria-busy="true" />
  return (
    <SetupFields
      settings={settings}
      folder={status.folder}
      version={status.appVersion}
      readOnly={status.readOnly !== null}
    />
  )
}

type SetupFieldsProps = { settings: Settings; folder: string; version: string; readOnly: boolean }

function SetupFields({ settings, folder, version, readOnly }: SetupFieldsProps) {
  const save = useSetSettings()
  const own = useOwnLayouts()
  const layouts = useLayoutActions()
  const { say, fail } = useNotices()
  const set = (change: Partial<Settings>) =>
    save.mutate({ ...settings, ...change }, { onError: error => fail(inWords(error)) })
  const setUnit = <K extends keyof UnitChoice>(kind: K, unit: UnitChoice[K]) =>
    set({ units: { ...settings.units, [kind]: unit } })

  return (
    <main className="setup-place">
      <h1>Setup</h1>
      <Section title="Look">
        <Choice
          label="Theme"
          value={settings.theme}
          options={['system', 'light', 'dark']}
          onChange={theme => set({ theme })}
        />
        <Choice
          label="Paper for reports"
          value={settings.paper}
          options={['Letter', 'A4']}
          onChange={paper => set({ paper })}
        />
        <label className="check">
          <input
            type="checkbox"
            checked={settings.autoAdvance}
            onChange={event => set({ autoAdvance: event.target.checked })}
          />
          After a tag, go on to the next plug
        </label>
      </Section>
      <Section title="Units">
        <p className="field-remark">Only what is shown changes. What was typed stays as it was typed.</p>
        <Choice
          label="Pressure"
          value={settings.units.pressure}
          options={units.pressure}
          onChange={unit => setUnit('pressure', unit)}
        />
        <Choice
          label="Vacuum"
          value={settings.units.vacuum}
          options={units.vacuum}
          onChange={unit => setUnit('vacuum', unit)}
        />
        <Choice
          label="Length"
          value={settings.units.length}
          options={units.length}
          onChange={unit => setUnit('length', unit)}
        />
        <Choice
          label="Temperature"
          value={settings.units.temperature}
          options={units.temperature}
          onChange={unit => setUnit('temperature', unit)}
        />
        <Choice
          label="Altitude"
          value={settings.units.altitude}
          options={units.altitude}
          onChange={unit => setUnit('altitude', unit)}
        />
        <Choice
          label="Odometer"
          value={settings.units.distance}
          options={units.distance}
          onChange={unit => setUnit('distance', unit)}
        />
      </Section>
      <Section title="Names on new work">
        <label className="field">
          <span className="field-label">Technician</span>
          <input
            key={settings.technician}
            defaultValue={settings.technician}
            maxLength={80}
            autoComplete="off"
            onBlur={event => {
              if (event.target.value !== settings.technician) set({ technician: event.target.value })
            }}
          />
        </label>
        <label className="field">
          <span className="field-label">Shop, for the head of reports</span>
          <input
            key={settings.shop}
            defaultValue={settings.shop}
            maxLength={120}
            autoComplete="off"
            onBlur={event => {
              if (event.target.value !== settings.shop) set({ shop: event.target.value })
            }}
          />
        </label>
      </Section>
      <Section title="Rules of this shop">
        <p className="field-remark">
          Published limits contradict each other. New jobs are judged by these; a limit typed from the
          vehicle&rsquo;s service information always wins, and every verdict names the rule it used.
        </p>
        <RuleChoices rules={settings.rules ?? {}} onChange={rules => set({ rules })} />
      </Section>
      <Section title="Own layouts">
        {own.length === 0 && <p>None yet. “Draw another” in a new job makes one.</p>}
        <ul className="setup-layouts">
          {own.map(layout => (
            <li key={layout.id}>
              <span>{layout.name}</span>
              <Button
                isDisabled={readOnly}
                onPress={() =>
                  layouts.remove.mutate(layout.id, {
                    onSuccess: () =>
                      say(`${layout.name} is removed. Jobs keep their own copy.`, () =>
                        layouts.save.mutate(layout),
                      ),
                    onError: error => fail(inWords(error)),
                  })
                }
              >
                Remove {layout.name}
              </Button>
            </li>
          ))}
        </ul>
      </Section>
      <Section title="Catalogue">
        <p>
          Everything is kept in <code>{folder}</code>, on this computer only.
        </p>
        <CatalogueCheck readOnly={readOnly} />
        <div className="row">
          <DemoLoader />
        </div>
      </Section>
      <Section title="About">
        <About version={version} />
      </Section>
    </main>
  )
}
