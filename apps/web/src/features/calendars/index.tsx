export { CalendarAddresses } from './calendar-addresses.tsx'
export type { CrewOfCalendar } from './make-address.tsx'
