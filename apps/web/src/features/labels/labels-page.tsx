import type { Area } from '@glandkeeper/contract/areas'
import { labelGrids, LabelSize, mostLabels, printLabels } from '@glandkeeper/contract/labels'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'react-router'
import { addressOf } from '../../platform/client.ts'
import { counted } from '../../ui/count.ts'
import { Empty } from '../../ui/empty.tsx'
import { ChoiceInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { siteAreas } from '../register/queries.ts'
import { isOfThisMachineOnly } from './reachable.ts'

/** Sheets of labels to hang at the valves: a phone held to one opens the valve. */
export function LabelsPage() {
  const known = useQuery(siteAreas)
  return (
    <main className={page.page}>
      <title>Labels · Glandkeeper</title>
      <div className={page.title}>
        <h1>Labels</h1>
        <Link to="/register">Back to the register</Link>
      </div>
      {known.data ? (
        <Choices areas={known.data.areas} />
      ) : known.error ? (
        <ProblemNote error={known.error} again={{ words: 'Read the areas again', onPress: () => void known.refetch() }} />
      ) : (
        <p role="status">Reading the areas</p>
      )}
    </main>
  )
}

const EVERY_AREA = 'every area'

function Choices({ areas }: { areas: readonly Area[] }) {
  const [size, setSize] = useState<LabelSize>('70 x 37')
  const [area, setArea] = useState(EVERY_AREA)
  const wanted = areas.filter(({ code }) => area === EVERY_AREA || code === area)
  const labels = wanted.reduce((sum, { valveCount }) => sum + valveCount, 0)
  const choices = areas
    .toSorted((one, other) => one.walkPosition - other.walkPosition)
    .map(({ code, name, valveCount }) => ({ value: code, words: `${code} ${name}, ${counted(valveCount, 'valve')}` }))
  return (
    <>
      <p>Each label has the tag, what the valve is, and a code. A phone's camera held to the code opens the valve.</p>
      <ChoiceInput
        label="Size of a label"
        value={size}
        onChange={(words) => setSize(LabelSize.parse(words))}
        choices={LabelSize.options.map((option) => ({ value: option, words: sizeInWords(option) }))}
      />
      <ChoiceInput
        label="Valves of"
        value={area}
        onChange={setArea}
        choices={[{ value: EVERY_AREA, words: EVERY_AREA }, ...choices]}
      />
      <Sheets size={size} area={area === EVERY_AREA ? undefined : area} labels={labels} />
    </>
  )
}

function Sheets({ size, area, labels }: { size: LabelSize; area: string | undefined; labels: number }) {
  if (labels === 0) return <Empty title="No valve here yet">Choose another area, or add its valves to the register.</Empty>
  if (labels > mostLabels)
    return (
      <p>
        {counted(labels, 'valve')}: at most {mostLabels} labels are printed at once. Choose an area.
      </p>
    )
  const { columns, rows } = labelGrids[size]
  const sheets = Math.ceil(labels / (columns * rows))
  return (
    <>
      <p>
        {counted(labels, 'valve')} in walking order, {counted(sheets, 'sheet')} of A4. Print at 100 %, not fitted to the page. The
        codes lead to <b>{window.location.origin}</b>, where this page was opened.
      </p>
      {isOfThisMachineOnly(window.location.hostname) && (
        <p role="alert" className="hot">
          No phone gets to this address: it means the machine it is typed on. Open this page under the address that phones use,
          then print.
        </p>
      )}
      <div className={page.acts}>
        <a href={addressOf(printLabels, { query: { size, area } })} target="_blank" rel="noreferrer">
          Open the sheets as PDF
        </a>
      </div>
    </>
  )
}

function sizeInWords(size: LabelSize): string {
  const { columns, rows } = labelGrids[size]
  return `${size} mm, ${columns * rows} on a sheet`
}
