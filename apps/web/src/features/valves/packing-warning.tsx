import type { Advice, PackingAdvice } from '@glandkeeper/contract/packings'
import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { asSentence } from '../../ui/sentence.ts'
import { packingAdvice } from '../packings/queries.ts'
import look from './packing-warning.module.css'

/** Says when what is packed does not stand what goes through the valve, and what would. Silent while that is being read. */
export function PackingWarning({ tag }: { tag: string }) {
  const { data } = useQuery(packingAdvice(tag))
  if (!data) return null
  return (
    <section className={look.section} aria-label="Packing for this service">
      {data.fitted?.verdict === 'outside its limits' && <Warning fitted={data.fitted} ranking={data.ranking} />}
      <Ranking {...data} />
    </section>
  )
}

function Warning({ fitted, ranking }: { fitted: Advice; ranking: readonly Advice[] }) {
  const better = ranking.filter(({ verdict }) => verdict === 'suitable').slice(0, 3)
  return (
    <p className={look.warning}>
      <b className="hot">What is packed here is outside its limits.</b>{' '}
      {asSentence(`${fitted.name}: ${saidOf(fitted, ['outside']).join('; ')}`)}{' '}
      {better.length > 0
        ? `Within theirs: ${better.map(({ name }) => name).join(', ')}.`
        : 'No kind of packing known here is within its own.'}{' '}
      Confirm the limits under <Link to={`/packings/${encodeURIComponent(fitted.name)}`}>{fitted.name}</Link>, and this
      valve&rsquo;s temperature and pressure, before anything is ordered.
    </p>
  )
}

/** Every kind of packing for this service, the best first, with the figures that decide. */
function Ranking({ fitted, ranking, service }: PackingAdvice) {
  return (
    <details>
      <summary>
        {fitted === null ? 'What is packed is not recorded.' : asSentence(`${fitted.name}: ${fitted.verdict}`)} All kinds of
        packing for this service
      </summary>
      <ol className={look.ranking}>
        {ranking.map((advice) => (
          <li key={advice.name}>
            <b>{advice.name}</b>, {advice.verdict}
            {advice.name === fitted?.name && ', packed here'}
            <span className="soft">
              {' '}
              {asSentence(saidOf(advice, ['outside', 'not known', 'near', 'within', 'note']).join('; '))}
            </span>
          </li>
        ))}
      </ol>
      <p className="soft">
        {service.ph !== null &&
          `pH ${service.ph.lowest} to ${service.ph.highest} is taken from the name of the fluid, from memory. `}
        The order knows no price and no stock; whoever knows the service decides.
      </p>
    </details>
  )
}

function saidOf({ reasons }: Advice, standings: readonly Advice['reasons'][number]['standing'][]): string[] {
  return reasons.filter(({ standing }) => standings.includes(standing)).map(({ detail }) => detail)
}
