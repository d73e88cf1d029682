import type { z } from 'zod'
import type { Role } from './roles.ts'

/** Who may call: `anyone`, or the roles of people signed in. There is no default, so nobody forgets it. */
export type Caller = 'anyone' | readonly Role[]

/**
 * One endpoint as a plain value: the server registers it, the web calls it, tests walk the list of them.
 * Bodies are strict objects, so a misspelt field is an error and never a silent loss.
 */
export interface Endpoint {
  readonly method: 'GET' | 'POST' | 'PUT' | 'DELETE'
  /** All under `/api/`, but for a calendar: its address is typed into other programs, and is all they know. */
  readonly path: `/api/${string}` | `/calendar/${string}`
  readonly who: Caller
  readonly params?: z.ZodObject
  readonly query?: z.ZodObject
  readonly body?: z.ZodType
  /**
   * Bodies past the limit for JSON: `csv` is sent as text/csv and read as bytes; `files` is sent as multipart/form-data,
   * each field of the body one file, read as bytes; `evidence` is an export as it was downloaded, sent as bytes.
   */
  readonly bodyKind?: 'csv' | 'files' | 'evidence'
  readonly ok: z.ZodType
  /** `csv` answers are sent as text/csv, `calendar` as text/calendar; `pdf` and `jpeg` as such, to be looked at or printed. */
  readonly okKind?: 'csv' | 'calendar' | 'pdf' | 'jpeg'
  readonly status: 200 | 201 | 202
}

export const endpoint = <const E extends Endpoint>(value: E): E => value

export type ParamsOf<E extends Endpoint> = E['params'] extends z.ZodType ? z.output<E['params']> : undefined
export type QueryOf<E extends Endpoint> = E['query'] extends z.ZodType ? z.output<E['query']> : undefined
export type BodyOf<E extends Endpoint> = E['body'] extends z.ZodType ? z.output<E['body']> : undefined
export type OkOf<E extends Endpoint> = z.output<E['ok']>

/** What a caller writes down: before defaults are filled in and text is read as numbers. */
export type ParamsIn<E extends Endpoint> = E['params'] extends z.ZodType ? z.input<E['params']> : undefined
export type QueryIn<E extends Endpoint> = E['query'] extends z.ZodType ? z.input<E['query']> : undefined
export type BodyIn<E extends Endpoint> = E['body'] extends z.ZodType ? z.input<E['body']> : undefined
export type OkIn<E extends Endpoint> = z.input<E['ok']>
