/** What stands in each event of a calendar, by the name of its line: unfolded and with nothing escaped, as RFC 5545, 3.1 and 3.3.11 have it. */
export function eventsIn(calendar: string): Record<string, string>[] {
  return calendar
    .split('BEGIN:VEVENT\r\n')
    .slice(1)
    .map((event) => linesIn(event.split('END:VEVENT\r\n')[0]!))
}

/** The lines before the first event. */
export function headIn(calendar: string): Record<string, string> {
  return linesIn(calendar.split('BEGIN:VEVENT\r\n')[0]!)
}

function linesIn(text: string): Record<string, string> {
  const lines = text.replaceAll(/\r\n[ \t]/g, '').split('\r\n')
  return Object.fromEntries(
    lines.flatMap((line) => {
      const [, name, value] = /^([A-Z-]+)[^:]*:(.*)$/s.exec(line) ?? []
      return name === undefined ? [] : [[name, unescaped(value!)]]
    }),
  )
}

function unescaped(value: string): string {
  return value.replaceAll(/\\([\\;,nN])/g, (_, letter: string) => (letter.toLowerCase() === 'n' ? '\n' : letter))
}
