import type { ReactNode } from 'react'

/** A few lines of what commonly stands in an area of that name, 140 wide and 43 high; an unknown one is a plain bay. */
const sketches: readonly { names: RegExp; lines: ReactNode }[] = [
  {
    names: /boiler|furnace|kiln/i,
    lines: <path d="M18 43V16a16 16 0 0 1 32 0V43M62 43V16a16 16 0 0 1 32 0V43M114 43V0h10V43" />,
  },
  { names: /main|pipe|header|rack/i, lines: <path d="M0 17H140M0 23H140M30 23V43M76 23V43M122 23V43" /> },
  {
    names: /tank|store|farm/i,
    lines: (
      <path d="M12 28a14 14 0 1 0 28 0a14 14 0 1 0-28 0M56 28a14 14 0 1 0 28 0a14 14 0 1 0-28 0M100 28a14 14 0 1 0 28 0a14 14 0 1 0-28 0" />
    ),
  },
  { names: /effluent|water|drain|sewer/i, lines: <path d="M12 27H58L48 41H22ZM80 27H126L116 41H90Z" /> },
  {
    names: /machine|dryer|press|mill/i,
    lines: (
      <path d="M6 35H46M6 39H46M12 35V25H28V35M52 33a7 7 0 1 0 14 0a7 7 0 1 0-14 0M70 21a7 7 0 1 0 14 0a7 7 0 1 0-14 0M88 33a7 7 0 1 0 14 0a7 7 0 1 0-14 0M106 21a7 7 0 1 0 14 0a7 7 0 1 0-14 0" />
    ),
  },
  { names: /bleach|tower|column|still/i, lines: <path d="M14 43V8q13-10 26 0V43M56 43V8q13-10 26 0V43M98 43V20h28V43" /> },
  {
    names: /stock|prepar|pump|chest/i,
    lines: <path d="M10 12h26v31M10 12v31M50 12h26v31M50 12v31M90 43l7-24h30l7 24M104 31a8 8 0 1 0 16 0a8 8 0 1 0-16 0" />,
  },
]
const plainBay = <path d="M0 12L70 2L140 12M24 43V20H60V43M84 20H116V32H84Z" />

export function AreaSketch({ name }: { name: string }) {
  const { lines } = sketches.find((sketch) => sketch.names.test(name)) ?? { lines: plainBay }
  return (
    <svg height="46" width="100%" style={{ overflow: 'hidden' }} data-sketch aria-hidden="true">
      <g className="thin" opacity=".75" transform="translate(0 2)">
        {lines}
      </g>
      <rect x="1" y="2" style={{ width: 'calc(100% - 2px)' }} height="43" className="out" />
    </svg>
  )
}
