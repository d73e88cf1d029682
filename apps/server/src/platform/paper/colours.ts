/** The colours of look.css for print. The ground is the paper in the printer: a tint would only grey the letters. */
export const paperColours = {
  ink: '#1E2328',
  soft: '#57544A',
  accent: '#A8321A',
  hatch: '#3C4348',
  rule: '#CBBFA4',
  sheet: '#FFFFFF',
  steel: '#DADFDE',
  pack: '#EAD8AC',
  medium: '#D0E1E4',
} as const
