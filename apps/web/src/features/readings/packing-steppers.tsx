import { FigureStepper } from './figure-stepper.tsx'

interface PackingStepperProps {
  label: string
  /** What is seen of the label. */
  short: string
  value: number | null
  onChange: (value: number | null) => void
}

/** Whole rings, at least one. */
export function RingsStepper(props: PackingStepperProps) {
  return <FigureStepper {...props} step={1} least={1} decimals={0} />
}

/** The square side of the cord, by half millimetres. */
export function SectionStepper(props: Omit<PackingStepperProps, 'label'>) {
  return <FigureStepper label="Section, mm" {...props} step={0.5} least={1} />
}
