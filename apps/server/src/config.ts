import path from 'node:path'
import { z } from 'zod'

const Environment = z.object({
  PORT: z.coerce.number().int().min(0).max(65535).default(4170),
  HOST: z.string().default('127.0.0.1'),
  GLANDKEEPER_DATA: z.string().default('data'),
  DATABASE_URL: z
    .string()
    .regex(/^(file:|postgres(ql)?:\/\/)/, 'DATABASE_URL: file:… or postgresql://…')
    .optional()
    .or(z.literal('').transform(() => undefined)),
  /** `off`: an empty register gets one planner instead of the demo plant. */
  GLANDKEEPER_DEMO: z.enum(['on', 'off']).default('on'),
  /** The demo people get this password instead of one drawn at random. For tests. */
  GLANDKEEPER_DEMO_PASSWORD: z.string().min(8).optional(),
  /** `on` when a proxy with HTTPS stands in front: then its word on address and protocol is taken. */
  GLANDKEEPER_PROXY: z.enum(['on', 'off']).default('off'),
  /** `self-made` makes a certificate for trial; `given` takes the two files named beside it. */
  GLANDKEEPER_HTTPS: z.enum(['off', 'self-made', 'given']).default('off'),
  GLANDKEEPER_CERT: z.string().optional(),
  GLANDKEEPER_KEY: z.string().optional(),
  GLANDKEEPER_LOG: z.enum(['silent', 'error', 'warn', 'info', 'debug']).default('warn'),
})

export type HttpsConfig =
  | { readonly is: 'off' | 'self-made' }
  | { readonly is: 'given'; readonly cert: string; readonly key: string }

export interface Config {
  readonly port: number
  readonly host: string
  readonly dataFolder: string
  readonly databaseUrl: string
  readonly demo: boolean
  readonly behindProxy: boolean
  readonly https: HttpsConfig
  readonly demoPassword: string | undefined
  readonly logLevel: z.infer<typeof Environment>['GLANDKEEPER_LOG']
}

/** Reads the environment once; every fault is named, and the server does not start with one. */
export function readConfig(environment: Readonly<Record<string, string | undefined>>, projectFolder: string): Config {
  const parsed = Environment.safeParse(environment)
  if (!parsed.success) throw new Error(`settings of the environment:\n${z.prettifyError(parsed.error)}`)
  const values = parsed.data
  const dataFolder = path.resolve(projectFolder, values.GLANDKEEPER_DATA)
  return {
    port: values.PORT,
    host: values.HOST,
    dataFolder,
    databaseUrl: values.DATABASE_URL ?? `file:${path.join(dataFolder, 'glandkeeper.db')}`,
    demo: values.GLANDKEEPER_DEMO === 'on',
    https: httpsOf(values),
    behindProxy: values.GLANDKEEPER_PROXY === 'on',
    demoPassword: values.GLANDKEEPER_DEMO_PASSWORD,
    logLevel: values.GLANDKEEPER_LOG,
  }
}

function httpsOf(values: z.output<typeof Environment>): HttpsConfig {
  const { GLANDKEEPER_HTTPS: is, GLANDKEEPER_CERT: cert, GLANDKEEPER_KEY: key } = values
  if (is !== 'given') {
    if (cert || key) throw new Error('settings of the environment: a certificate and its key are for GLANDKEEPER_HTTPS=given')
    return { is }
  }
  if (!cert || !key) throw new Error('settings of the environment: a given certificate needs both, the certificate and its key')
  return { is, cert, key }
}
