import type { FigureName, SiteFamily } from '@glandkeeper/contract/packings'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'react-router'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { FigureOrigin } from '../settings/index.tsx'
import { AddFamilyForm } from './add-family-form.tsx'
import { rangeInWords, tableColumns } from './family-words.ts'
import { LimitsPlot } from './limits-plot.tsx'
import css from './packings.module.css'
import { siteFamilies } from './queries.ts'

/** What may be put into a box: each kind of packing with its limits, its figures and what they stand on. */
export function PackingsPage() {
  const known = useQuery(siteFamilies)
  return (
    <main className={page.page}>
      <title>Packings · Glandkeeper</title>
      <h1>Packings</h1>
      <Link to="/packings/lives">How long they last in this plant</Link>
      <p className={css.lead}>
        Kinds of packing by what they are made of, with broad figures of common practice. No maker&rsquo;s data: confirm or change
        each figure with the sheet of what you really buy. <b>Old packing may hold asbestos or lead</b>: presume so until it is
        known not to.
      </p>
      {known.data ? (
        <Families families={known.data.families} />
      ) : known.error ? (
        <ProblemNote error={known.error} again={{ words: 'Read the packings again', onPress: () => void known.refetch() }} />
      ) : (
        <p role="status">Reading the packings</p>
      )}
    </main>
  )
}

function Families({ families }: { families: readonly SiteFamily[] }) {
  return (
    <>
      <section className={css.section} aria-labelledby="limits">
        <h2 id="limits">What they stand</h2>
        <LimitsPlot families={families} />
      </section>
      <section className={css.section} aria-labelledby="figures">
        <h2 id="figures">Figures</h2>
        <div className={page.wide}>
          <FamilyTable families={families} />
        </div>
      </section>
      {keepsRegister(useMe()) && <AddFamily />}
    </>
  )
}

function FamilyTable({ families }: { families: readonly SiteFamily[] }) {
  return (
    <table className={`${page.table} ${css.table}`}>
      <thead>
        <tr>
          <th scope="col">Family</th>
          {tableColumns.map(({ heading }) => (
            <th key={heading} scope="col">
              {heading}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {families.map((family) => (
          <tr key={family.name}>
            <th scope="row">
              <Link to={`/packings/${encodeURIComponent(family.name)}`}>{family.name}</Link>, {family.form}
              {family.isOldStock && ', old stock'}
              {family.isOwn && ', our own'}
              {family.cautions.length > 0 && <span className={css.cautionWords}>{family.cautions.join(', ')}</span>}
            </th>
            {tableColumns.map(({ heading, figures }) => (
              <Cell key={heading} heading={heading} family={family} figures={figures} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** A range stands on the weaker of its two figures. */
function Cell({
  heading,
  family,
  figures,
}: {
  heading: string
  family: SiteFamily
  figures: readonly [FigureName, FigureName?]
}) {
  const shown = figures.flatMap((name) => (name === undefined ? [] : [family.figures[name]]))
  const { mark, confirmed } = shown.find((figure) => figure.confirmed === null) ?? family.figures[figures[0]]
  return (
    <td data-heading={heading}>
      <span className={confirmed ? css.fig : `${css.fig} ${css.unconfirmed}`}>{rangeInWords(family, figures)}</span>
      <span className={css.mark}>
        <FigureOrigin mark={mark} confirmed={confirmed} />
      </span>
    </td>
  )
}

function AddFamily() {
  const [isAdding, setIsAdding] = useState(false)
  return (
    <section className={css.section} aria-label="A family of our own">
      {isAdding ? (
        <AddFamilyForm onDone={() => setIsAdding(false)} />
      ) : (
        <button type="button" onClick={() => setIsAdding(true)}>
          Add a family of our own
        </button>
      )}
    </section>
  )
}
