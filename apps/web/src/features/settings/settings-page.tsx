import { quantities } from '@glandkeeper/contract/quantity'
import { type Setting, settingGroups, settings } from '@glandkeeper/contract/settings'
import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { counted } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { ConfirmableFigure } from './index.tsx'
import { siteSettings, useConfirmSetting } from './queries.ts'
import css from './settings-page.module.css'

/** Every figure the program computes with and the site may set, with what it stands on. */
export function SettingsPage() {
  const known = useQuery(siteSettings)
  return (
    <main className={page.page}>
      <title>Settings · Glandkeeper</title>
      <h1>Engineering settings</h1>
      <p className={css.lead}>
        These figures go into lengths, torques, leaks and follow-ups. Dashed ones are defaults that nobody here has vouched for.
        What belongs to one kind of packing stands under <Link to="/packings">Packings</Link>. Local codes and qualified people
        decide.
      </p>
      {known.data ? (
        <Groups known={known.data.settings} />
      ) : known.error ? (
        <ProblemNote error={known.error} again={{ words: 'Read the settings again', onPress: () => void known.refetch() }} />
      ) : (
        <p role="status">Reading the settings</p>
      )}
    </main>
  )
}

function Groups({ known }: { known: readonly Setting[] }) {
  const open = known.filter(({ confirmed }) => confirmed === null).length
  return (
    <>
      <p className="soft">
        {open === 0 ? 'All of them are confirmed.' : `${counted(open, 'default')} of ${known.length} still to be confirmed.`}
      </p>
      {settingGroups.map((group) => (
        <section key={group} className={css.group} aria-labelledby={`settings-${group}`}>
          <h2 id={`settings-${group}`}>{heading[group]}</h2>
          <ul className={css.list}>
            {known
              .filter(({ key }) => settings[key].group === group)
              .map((setting) => (
                <SettingRow key={setting.key} setting={setting} />
              ))}
          </ul>
        </section>
      ))}
    </>
  )
}

const heading = {
  cutting: 'Cutting rings',
  loading: 'Loading the gland',
  leaks: 'Leaks and what they cost',
  'follow-up': 'Follow-up, and the time between looks',
  forecast: 'Forecast, and what a standing means',
  rounds: 'Rounds: minutes, windows and weeks',
  repacks: 'Repacks: hours, and what running out costs',
} as const satisfies Record<(typeof settingGroups)[number], string>

function SettingRow({ setting: { key, value, confirmed } }: { setting: Setting }) {
  const confirm = useConfirmSetting()
  const mayChange = keepsRegister(useMe())
  const about = settings[key]
  const meta = quantities.get(about.value)
  if (!meta) return null
  return (
    <ConfirmableFigure
      meta={meta}
      value={value}
      mark={about.mark}
      confirmed={confirmed}
      usually={about.usually}
      why={about.why}
      save={mayChange ? (figure) => confirm(key, value, figure) : null}
    />
  )
}
