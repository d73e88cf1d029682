import { type Advice, figureNames, type PackingAdvice, type SiteFamily } from '@glandkeeper/contract/packings'
import { fluidTraits } from '@glandkeeper/engines/packing/fluids'
import { type JudgedFamily, mostUsed, rankFamilies, type RankedFamily } from '@glandkeeper/engines/packing/suitability'
import { bar, celsius } from '@glandkeeper/units/quantity'
import type { ValveModel } from '../../generated/sqlite/models.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { siteFamilies } from './read.ts'

/** What is packed in a valve against what goes through it, and every other kind the site may put in. */
export async function adviceFor(read: Read, siteId: string, tag: string): Promise<PackingAdvice> {
  const valve = await read.valve.findUnique({
    where: { siteId_tag: { siteId, tag } },
    include: { state: { select: { packingFamily: true } } },
  })
  if (!valve) throw new Refusal('valve/unknown', tag)
  const service = serviceOf(valve)
  const families = (await siteFamilies(read, siteId)).map(forEngines)
  const ranked = rankFamilies({ ...service, families })
  // The contract and the write of each family keep its figures possible: this would be a fault of the program.
  if (!ranked.ok) throw new Error(ranked.problem.detail)
  const ranking = ranked.ranking.map(presentAdvice)
  const fitted = valve.state?.packingFamily ?? null
  const { fluid } = valve
  return {
    service: { fluid, ...service },
    fitted: fitted === null ? null : (ranking.find(({ name }) => name === fitted) ?? nothingKnownOf(fitted)),
    ranking,
  }
}

function serviceOf(valve: ValveModel) {
  const { ph, isOxidising } = fluidTraits(valve.fluid)
  return {
    phase: valve.phase as PackingAdvice['service']['phase'],
    temperature: valve.temperatureC === null ? null : celsius(valve.temperatureC),
    pressure: valve.pressureBar === null ? null : bar(valve.pressureBar),
    stemMovement: valve.stemMovement as 'rising' | null,
    ph,
    isOxidising,
  }
}

function forEngines({ name, form, isOldStock, cautions, figures }: SiteFamily): JudgedFamily & { readonly name: string } {
  const plain = Object.fromEntries(figureNames.map((figure) => [figure, figures[figure].value]))
  return { name, form, isOldStock, cautions, figures: plain as unknown as JudgedFamily['figures'] }
}

function presentAdvice({ name, verdict, reasons }: RankedFamily): Advice {
  return {
    name,
    verdict,
    mostUsed: mostUsed({ verdict, reasons }),
    reasons: reasons.map(({ code, standing, used, detail }) => ({ code, standing, used, detail })),
  }
}

function nothingKnownOf(name: string): Advice {
  const detail = name === 'unknown' ? 'nobody wrote down what is packed' : `no limits of ${name} are known`
  return {
    name,
    verdict: 'not known',
    mostUsed: null,
    reasons: [{ code: 'family/not-known', standing: 'not known', used: null, detail }],
  }
}
