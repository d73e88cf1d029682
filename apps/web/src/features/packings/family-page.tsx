import { figureNames, type SiteFamily } from '@glandkeeper/contract/packings'
import { cautionSentences } from '@glandkeeper/engines/packing/cautions'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link, useParams } from 'react-router'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { ConfirmableFigure } from '../settings/index.tsx'
import { AboutForm } from './about-form.tsx'
import { metaOf } from './family-words.ts'
import css from './packings.module.css'
import { siteFamilies, useChangeFamily } from './queries.ts'

/** One kind of packing: what it is, what to beware of, and each figure with what it stands on. */
export function FamilyPage() {
  const { family: name = '' } = useParams()
  const known = useQuery(siteFamilies)
  const family = known.data?.families.find((one) => one.name === name)
  return (
    <main className={page.page}>
      <title>{`${name} · Glandkeeper`}</title>
      <header className={page.title}>
        <h1>{name}</h1>
        {family && (
          <span className="soft">
            {family.form}
            {family.isOldStock && ', met in old boxes and not put in today'}
            {family.isOwn && ', a family of our own'}
          </span>
        )}
        <Link to="/packings">All packings</Link>
      </header>
      {family ? (
        <Known key={family.name} family={family} />
      ) : known.error ? (
        <ProblemNote error={known.error} again={{ words: 'Read the packing again', onPress: () => void known.refetch() }} />
      ) : known.data ? (
        <p>No packing of this name is known here.</p>
      ) : (
        <p role="status">Reading the packing</p>
      )}
    </main>
  )
}

function Known({ family }: { family: SiteFamily }) {
  const mayChange = keepsRegister(useMe())
  const change = useChangeFamily(family.name)
  const { revision } = family
  return (
    <>
      <p className={css.lead}>{family.description}</p>
      {family.cautions.length > 0 && (
        <section className={css.section} aria-labelledby="cautions">
          <h2 id="cautions">Before hands go on it</h2>
          <ul className={css.cautions}>
            {family.cautions.map((caution) => (
              <li key={caution}>{cautionSentences[caution]}</li>
            ))}
          </ul>
        </section>
      )}
      {mayChange && family.isOwn && <ChangeAbout family={family} />}
      <section className={css.section} aria-labelledby="figures">
        <h2 id="figures">Figures</h2>
        <ul className={css.list}>
          {figureNames.map((figure) => (
            <ConfirmableFigure
              key={figure}
              meta={metaOf(figure)}
              {...family.figures[figure]}
              save={mayChange ? (value) => change({ revision, figures: { [figure]: value } }) : null}
            />
          ))}
        </ul>
      </section>
    </>
  )
}

function ChangeAbout({ family }: { family: SiteFamily }) {
  const [isChanging, setIsChanging] = useState(false)
  if (isChanging) return <AboutForm family={family} onDone={() => setIsChanging(false)} />
  return (
    <div className={page.acts}>
      <button type="button" onClick={() => setIsChanging(true)}>
        Change description and cautions
      </button>
    </div>
  )
}
