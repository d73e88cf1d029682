import { z } from 'zod'

/**
 * Every refusal this API can give: status, title, what to do, and whether the same request may succeed later.
 * The key is `word/what` and never changes its meaning; programs compare the key, people read the title.
 */
export const problems = {
  'request/malformed': {
    status: 400,
    retry: false,
    title: 'The request could not be read',
    help: 'Send JSON in UTF-8, complete and well formed.',
  },
  'request/invalid': {
    status: 422,
    retry: false,
    title: 'The request does not fit the contract',
    help: 'Every fault is listed with the place it was found.',
  },
  'request/too-large': {
    status: 413,
    retry: false,
    title: 'The request is too large',
    help: 'Send less at once; lists of valves and histories go through the import.',
  },
  'request/unsupported': {
    status: 415,
    retry: false,
    title: 'This kind of content is not read here',
    help: 'Send application/json, text/csv to the import, or multipart/form-data with a photo.',
  },
  'request/not-found': { status: 404, retry: false, title: 'Nothing is at this address', help: 'Check the address.' },
  'request/foreign-origin': {
    status: 403,
    retry: false,
    title: 'The request came from another web site',
    help: 'Use the program from its own address.',
  },
  'person/not-signed-in': {
    status: 401,
    retry: false,
    title: 'Nobody is signed in',
    help: 'Sign in; entries waiting on the device are kept.',
  },
  'person/not-allowed': {
    status: 403,
    retry: false,
    title: 'Your role may not do this',
    help: 'Ask a planner or engineer of your site.',
  },
  'person/wrong-sign-in': {
    status: 401,
    retry: false,
    title: 'Name or password is wrong',
    help: 'Check both; capitals matter in the password.',
  },
  'person/too-many-tries': { status: 429, retry: true, title: 'Too many tries', help: 'Wait a minute, then try again.' },
  'person/unknown': { status: 404, retry: false, title: 'No such person', help: 'Look the person up in the register.' },
  'person/name-taken': { status: 409, retry: false, title: 'This sign-in name is taken', help: 'Choose another sign-in name.' },
  'person/last-keeper': {
    status: 409,
    retry: false,
    title: 'Nobody would be left to keep the register',
    help: 'Make somebody else planner or engineer first.',
  },
  'area/unknown': { status: 404, retry: false, title: 'No such area', help: 'Look the area up in the register.' },
  'area/code-taken': { status: 409, retry: false, title: 'This area code is taken', help: 'Choose another code.' },
  'valve/unknown': {
    status: 404,
    retry: false,
    title: 'No such valve',
    help: 'Check the tag, or add the valve to the register.',
  },
  'valve/tag-taken': {
    status: 409,
    retry: false,
    title: 'This tag is taken by another valve',
    help: 'A tag names one valve of a site.',
  },
  'valve/changed-meanwhile': {
    status: 409,
    retry: false,
    title: 'Somebody changed this valve meanwhile',
    help: 'Load it again and repeat your change.',
  },
  'valve/impossible-gland': {
    status: 422,
    retry: false,
    title: 'This gland cannot exist',
    help: 'Measure again; every contradiction is listed.',
  },
  'label/nothing-found': {
    status: 422,
    retry: false,
    title: 'No valve fits these labels',
    help: 'Choose another area, other words, or all valves; retired ones get no label.',
  },
  'label/too-many': {
    status: 422,
    retry: false,
    title: 'These are too many labels for one printing',
    help: 'Choose an area or search words: at most 500 valves.',
  },
  'event/invalid': {
    status: 422,
    retry: false,
    title: 'The entry cannot be understood',
    help: 'Every fault is listed with the place it was found.',
  },
  'event/unknown-kind': {
    status: 422,
    retry: true,
    title: 'This server does not know this kind of entry yet',
    help: 'The device keeps it until the server is newer.',
  },
  'event/id-reused': {
    status: 409,
    retry: false,
    title: 'This id already names a different entry',
    help: 'To change an entry, correct it; the first one is kept.',
  },
  'event/in-the-future': {
    status: 422,
    retry: false,
    title: 'The entry is dated in the future',
    help: 'Check the date, and the clock of the device.',
  },
  'round/unknown': {
    status: 404,
    retry: false,
    title: 'No such round',
    help: 'It may have been closed; look at the list again.',
  },
  'round/nothing-due': {
    status: 422,
    retry: false,
    title: 'No valve of these areas is due by then',
    help: 'Choose a later day, more areas, or all valves.',
  },
  'round/too-long': {
    status: 422,
    retry: false,
    title: 'The round has too many stops',
    help: 'Choose fewer areas or an earlier day: at most 200 valves.',
  },
  'crew/unknown': {
    status: 404,
    retry: false,
    title: 'No such crew',
    help: 'It may have been retired; look at the list of crews.',
  },
  'daysoff/unknown': {
    status: 404,
    retry: false,
    title: 'These days off are not there',
    help: 'Somebody may have removed them; look at the list again.',
  },
  'daysoff/rule': {
    status: 422,
    retry: false,
    title: 'This recurrence rule cannot be read',
    help: 'Write it as in RFC 5545, in whole days: FREQ=YEARLY, or FREQ=WEEKLY;BYDAY=FR.',
  },
  'calendar/unknown': {
    status: 404,
    retry: false,
    title: 'No such calendar address',
    help: 'It may have been retired; ask a planner or engineer for a new one.',
  },
  'plan/unknown': {
    status: 404,
    retry: false,
    title: 'No such plan',
    help: 'A newer one may have taken its place; look at the plan again.',
  },
  'plan/not-a-draft': {
    status: 409,
    retry: false,
    title: 'This plan is in use already',
    help: 'Make a new plan, and take that one.',
  },
  'plan/out-of-date': {
    status: 409,
    retry: false,
    title: 'The plan in use has changed since this draft was made',
    help: 'Plan again: the draft does not know of what was moved or pinned meanwhile.',
  },
  'plan/frozen': {
    status: 409,
    retry: false,
    title: 'A round of these visits is made',
    help: 'Close the round first: what it leaves comes back into the plan.',
  },
  'plan/no-visit': {
    status: 422,
    retry: false,
    title: 'There is no visit to plan there',
    help: 'Look at the plan again: it may have been moved.',
  },
  'outage/unknown': {
    status: 404,
    retry: false,
    title: 'No such outage',
    help: 'Look at the list of outages again.',
  },
  'outage/changed-meanwhile': {
    status: 409,
    retry: false,
    title: 'Somebody changed this outage meanwhile',
    help: 'Load it again and repeat your change.',
  },
  'outage/not-planned': {
    status: 409,
    retry: false,
    title: 'This outage is over, or called off',
    help: 'Put down another one.',
  },
  'outage/not-over': {
    status: 409,
    retry: false,
    title: 'This outage is not over',
    help: 'Put down when it began and ended; then it can be looked back on.',
  },
  'repack/not-in-plan': {
    status: 422,
    retry: false,
    title: 'This valve is not in the plan',
    help: 'The plan has those that may run out before it ends; make a new plan if this one changed meanwhile.',
  },
  'repack/no-such-slot': {
    status: 422,
    retry: false,
    title: 'The plan has no such slot',
    help: 'Choose one of its fortnights or outages.',
  },
  'repack/cannot-be-there': {
    status: 409,
    retry: false,
    title: 'The valve cannot be repacked in this slot',
    help: 'What stands in the way is named: isolation, area, hours or stock.',
  },
  'repack/plan-in-use': {
    status: 409,
    retry: false,
    title: 'This plan is in use, or was',
    help: 'Plans that were taken stay on record.',
  },
  'repack/only-a-question': {
    status: 409,
    retry: false,
    title: 'This plan answers a question of what if',
    help: 'Change the outages or settings themselves and plan again.',
  },
  'stock/unknown': {
    status: 404,
    retry: false,
    title: 'No such item or lot in the store',
    help: 'Look at the list of the store again.',
  },
  'stock/name-taken': {
    status: 409,
    retry: false,
    title: 'The store has an item of this name',
    help: 'Choose another name, or change the item that is there.',
  },
  'stock/changed-meanwhile': {
    status: 409,
    retry: false,
    title: 'Somebody changed this item meanwhile',
    help: 'Load it again and repeat your change.',
  },
  'stock/id-reused': {
    status: 409,
    retry: false,
    title: 'This id already names another movement',
    help: 'Take the first one back and put down a new one.',
  },
  'stock/not-to-take-back': {
    status: 409,
    retry: false,
    title: 'This movement cannot be taken back',
    help: 'It is taken back already, is no movement of this item, or belongs to an entry: correct the entry.',
  },
  'photo/unknown': {
    status: 404,
    retry: true,
    title: 'This photo is not here',
    help: 'It is sent after its entry, and may still be on the device that took it.',
  },
  'photo/digest-differs': {
    status: 422,
    retry: false,
    title: 'The photo is not the one its address names',
    help: 'Send the bytes whose SHA-256 the entry names.',
  },
  'photo/not-a-jpeg': {
    status: 422,
    retry: false,
    title: 'This is not a JPEG picture',
    help: 'Photo and thumbnail are whole JPEG pictures, whatever they are called.',
  },
  'photo/too-large': {
    status: 413,
    retry: false,
    title: 'The photo is too large',
    help: 'At most 3 MB and 4096 pixels a side; its thumbnail at most 60 kB and 400 pixels.',
  },
  'bench/not-computed': {
    status: 422,
    retry: false,
    title: 'Nothing can be computed from these figures',
    help: 'Look at the input that is named.',
  },
  'import/unknown': { status: 404, retry: false, title: 'No such import', help: 'Look it up in the list of imports.' },
  'import/not-readable': {
    status: 422,
    retry: false,
    title: 'The file cannot be read as a table',
    help: 'Save it as CSV in UTF-8, with one line of headings.',
  },
  'import/not-ready': {
    status: 409,
    retry: false,
    title: 'The import is not at this step',
    help: 'Wait for the check to end, or start again with the file.',
  },
  'import/has-faults': {
    status: 409,
    retry: false,
    title: 'The file has rows with faults',
    help: 'Mend the file, or import the good rows.',
  },
  'packing/unknown': { status: 404, retry: false, title: 'No such packing family', help: 'Look it up on the page of packings.' },
  'packing/name-taken': {
    status: 409,
    retry: false,
    title: 'This name is taken by another packing family',
    help: 'Choose another name; capitals do not make one.',
  },
  'packing/changed-meanwhile': {
    status: 409,
    retry: false,
    title: 'Somebody changed this packing family meanwhile',
    help: 'Load it again and repeat your change.',
  },
  'packing/impossible-limits': {
    status: 422,
    retry: false,
    title: 'These limits leave no room between them',
    help: 'The highest must be above the lowest.',
  },
  'packing/not-own': {
    status: 409,
    retry: false,
    title: 'The library says what this packing family is',
    help: 'Change its figures, or add a family of your own.',
  },
  'setting/out-of-range': {
    status: 422,
    retry: false,
    title: 'This setting cannot be so',
    help: 'The range it may have stands beside it.',
  },
  'setting/changed-meanwhile': {
    status: 409,
    retry: false,
    title: 'Somebody changed this setting meanwhile',
    help: 'Load the settings again and repeat your change.',
  },
  'rule/unknown': { status: 404, retry: false, title: 'No such rule for leaks', help: 'Look at the list of rules again.' },
  'rule/changed-meanwhile': {
    status: 409,
    retry: false,
    title: 'Somebody changed this rule meanwhile',
    help: 'Load it again and repeat your change.',
  },
  'rule/not-in-order': {
    status: 422,
    retry: false,
    title: 'These steps of the rule contradict each other',
    help: 'More clean looks, or a lower percentage, may not bring the next look nearer.',
  },
  'evidence/too-much': {
    status: 422,
    retry: false,
    title: 'These are too many entries for one export',
    help: 'Choose a valve, an area or a shorter time: at most 100,000 entries.',
  },
  'store/conflict': { status: 409, retry: true, title: 'Two changes met', help: 'Try again.' },
  'store/busy': { status: 503, retry: true, title: 'The register is busy', help: 'Try again in a moment; nothing was written.' },
  'server/fault': {
    status: 500,
    retry: true,
    title: 'Unexpected fault',
    help: 'Try again; if it stays, tell the keeper of the server the number of this request.',
  },
} as const satisfies Record<string, { status: number; retry: boolean; title: string; help: string }>

export type ProblemCode = keyof typeof problems
const codes = Object.keys(problems) as [ProblemCode, ...ProblemCode[]]

/** One fault at one place; `pointer` is a JSON Pointer (RFC 6901) into what was sent. */
export const Fault = z.object({ pointer: z.string(), detail: z.string() })
export type Fault = z.infer<typeof Fault>

/** Problem details as in RFC 9457; `code` is the last part of `type` for programs. */
export const Problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int().min(400).max(599),
  code: z.enum(codes),
  detail: z.string().optional(),
  instance: z.string().optional(),
  errors: z.array(Fault).optional(),
})
export type Problem = z.infer<typeof Problem>

/** @example problemOf('valve/unknown', 'BM-3307').status // → 404 */
export function problemOf(code: ProblemCode, detail?: string, errors?: readonly Fault[], instance?: string): Problem {
  const { status, title } = problems[code]
  return {
    type: `/problems/${code}`,
    title,
    status,
    code,
    ...(detail !== undefined && { detail }),
    ...(instance !== undefined && { instance }),
    ...(errors !== undefined && { errors: [...errors] }),
  }
}

/** Every fault of a failed parse, each with a pointer, so that a form can mark all of them at once. */
export function faultsOf(error: z.ZodError, root = '#'): Fault[] {
  return error.issues.flatMap((issue) => {
    const at = (path: readonly PropertyKey[]) => root + path.map((part) => `/${escapePointer(String(part))}`).join('')
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => ({ pointer: at([...issue.path, key]), detail: 'not a known field' }))
    }
    return [{ pointer: at(issue.path), detail: issue.message }]
  })
}

function escapePointer(part: string): string {
  return part.replaceAll('~', '~0').replaceAll('/', '~1')
}
