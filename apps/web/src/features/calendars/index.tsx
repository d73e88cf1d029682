export { CalendarAddresses } from './calendar-addresses.tsx'
