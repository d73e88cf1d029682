import type { Calibration, ForecastsOf } from '@glandkeeper/contract/calibration'
import { formatMillimetres } from '@glandkeeper/units/format'
import { useQuery } from '@tanstack/react-query'
import { formatCount } from '../../ui/count.ts'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { CalibrationPlot } from './calibration-plot.tsx'
import { CalibrationTable } from './calibration-table.tsx'
import { coverageInWords, missInWords, readingsInWords } from './calibration-words.ts'
import css from './forecasts.module.css'
import { calibrationOf } from './queries.ts'

const titles: Readonly<Record<ForecastsOf, string>> = {
  said: 'Forecasts said here, and how they turned out',
  replayed: 'The same model on all lives in the register',
}

/** One kind of forecast against what became of the lives. */
export function HowTheyTurnedOut({ of, fittedAt }: { of: ForecastsOf; fittedAt: string | null }) {
  const known = useQuery(calibrationOf(of, fittedAt))
  return (
    <section className={css.section} aria-labelledby={of}>
      <h2 id={of}>{titles[of]}</h2>
      <p className={css.lead}>{of === 'said' ? <SaidNote /> : <ReplayedNote fittedAt={fittedAt} level={known.data?.level} />}</p>
      {known.data ? (
        <Found shown={known.data} />
      ) : known.error ? (
        <ProblemNote error={known.error} again={{ words: 'Compare again', onPress: () => void known.refetch() }} />
      ) : (
        <p role="status">Comparing forecasts with what happened</p>
      )}
    </section>
  )
}

function SaidNote() {
  return <>What this program said when an entry was made, kept unchanged, against what the entries of that valve tell now.</>
}

function ReplayedNote({ fittedAt, level }: { fittedAt: string | null; level: number | undefined }) {
  return (
    <>
      What the model would have said after each reading, had it known only the readings up to then.{' '}
      {level !== undefined &&
        `Judged on the day the reserve fell to ${formatMillimetres(level)}, where a valve comes to stand at watch: few glands are let run to none, and which ones are is no chance. `}
      {fittedAt !== null && (
        <b>
          With hindsight in one point: how fast like valves wear was learned from all lives, these among them, so this flatters
          the forecasts somewhat.
        </b>
      )}
    </>
  )
}

function Found({ shown }: { shown: Calibration }) {
  if (shown.overall.forecasts === 0) return <p>There are none yet whose outcome is known, nor any watched since.</p>
  const { valves, valvesLookedAt, overall } = shown
  return (
    <>
      {valvesLookedAt < valves && (
        <p className={css.lead}>
          {formatCount(overall.lives)} lives of {formatCount(valvesLookedAt)} valves were looked at, spread evenly over all{' '}
          {formatCount(valves)}.
        </p>
      )}
      <p className={css.lead}>{coverageInWords(overall)}</p>
      <p className={css.lead}>{missInWords(overall, shown.level)}</p>
      {overall.unknownBecause !== 'too few lives' && (
        <>
          {shown.curve.length > 1 && <CalibrationPlot curve={shown.curve} />}
          <CalibrationTable rows={shown.byReadings} first="Forecast with" nameOf={readingsInWords} />
          <ByGroup rows={shown.byGroup} />
        </>
      )}
    </>
  )
}

/** Groups that tell nothing are counted, not listed. */
function ByGroup({ rows }: { rows: Calibration['byGroup'] }) {
  const telling = rows.filter(({ unknownBecause }) => unknownBecause !== 'too few lives')
  const silent = rows.length - telling.length
  return (
    <>
      {telling.length > 0 && <CalibrationTable rows={telling} first="Service and packing" nameOf={(name) => name} />}
      {silent > 0 && <p className="soft">Groups with fewer than 10 lives, not shown: {formatCount(silent)}.</p>}
    </>
  )
}
