import type { airLoss } from '@glandkeeper/bench/leak/air'
import type { drops } from '@glandkeeper/bench/leak/drops'
import type { steamLoss } from '@glandkeeper/bench/leak/steam'
import type { waterLoss } from '@glandkeeper/bench/leak/water'
import { leakBarsDrawing } from '@glandkeeper/drawings/leak-bars'
import { openingDrawing } from '@glandkeeper/drawings/opening'
import { formatFigure } from '@glandkeeper/units/figure'
import { Drawn } from '../../ui/drawn.tsx'
import { type Draws, draws } from './drawable.ts'

export const leakDrawings: Draws = {
  drops: draws<typeof drops>('drops', ({ given, answer, room }) => {
    const own = answer.byVolume.find(({ volume }) => volume === given.dropVolume)
    const published = answer.byVolume.map((by) => ({ says: inDrops(by.volume), amount: by.perDay, isMain: by === own }))
    const asked = { says: inDrops(given.dropVolume), amount: answer.perDay, isMain: true }
    return <Drawn drawing={leakBarsDrawing({ bars: own ? published : [asked, ...published], unit: 'L/d', room })} />
  }),
  'steam-loss': draws<typeof steamLoss>('steam-loss', ({ given, answer, room }) => (
    <>
      <Drawn drawing={openingDrawing({ opening: given.opening, room })} />
      <Drawn
        drawing={leakBarsDrawing({
          bars: answer.figures.map(({ method, flow }) => ({ says: method, amount: flow, isMain: false })),
          unit: 'kg/h',
          room,
        })}
      />
    </>
  )),
  'water-loss': draws<typeof waterLoss>('water-loss', ({ given, room }) => (
    <Drawn drawing={openingDrawing({ opening: given.opening, room })} />
  )),
  'air-loss': draws<typeof airLoss>('air-loss', ({ given, room }) => (
    <Drawn drawing={openingDrawing({ opening: given.opening, room })} />
  )),
}

const inDrops = (volume: number): string => `drops of ${formatFigure(volume, 'mL', 2)}`
