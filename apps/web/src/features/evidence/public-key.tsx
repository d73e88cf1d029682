import type { showSiteKey } from '@glandkeeper/contract/evidence'
import type { OkOf } from '@glandkeeper/contract/endpoint'
import { useQuery } from '@tanstack/react-query'
import { formatMoment } from '../../platform/site-time.ts'
import { Reading } from '../../ui/reading.tsx'
import { useMe } from '../people/index.tsx'
import { keyFileName } from './evidence-words.ts'
import css from './evidence.module.css'
import { Letters } from './letters.tsx'
import { siteKey } from './queries.ts'

/** What an auditor compares with, and how the proof is made without this program. */
export function PublicKey() {
  const known = useQuery(siteKey)
  return (
    <section className={css.part} aria-labelledby="key">
      <h2 id="key">The public key</h2>
      <p>With it anybody can see that a file was signed by this register and not changed since, without asking us.</p>
      {known.data ? <Shown siteKey={known.data} /> : <Reading query={known} things="key" />}
      <h3>How to prove a file elsewhere</h3>
      <ol className={css.steps}>
        <li>
          <b>Today:</b> write the fingerprint down where nobody who keeps this server can change it: a letter to the auditor, the
          minutes of a meeting.
        </li>
        <li>
          <b>With each audit:</b> take a signed file out, and leave a copy with the auditor. Whoever wrote the whole record anew
          afterwards would be found out by that copy.
        </li>
        <li>
          <b>In doubt:</b> check the file here; or on another computer, without this program, with the fingerprint that was
          written down and one short script of ours: <code>node check-evidence.mjs FILE FINGERPRINT</code>
        </li>
      </ol>
      <p className="soft">
        A file proves that it is word for word what this register signed; two of different days, that nothing of the first was
        changed until the second. Neither proves that an entry was true when somebody made it. Against somebody who has the server
        and every copy only what is out of their hands helps: the fingerprint on paper, and a file that was handed over.
      </p>
    </section>
  )
}

function Shown({ siteKey: { publicKey, fingerprint, madeAt } }: { siteKey: OkOf<typeof showSiteKey> }) {
  const { timeZone } = useMe().site
  return (
    <>
      <dl className={css.key}>
        <dt>Fingerprint</dt>
        <dd>
          <Letters of={fingerprint} />
        </dd>
        <dt>Made on</dt>
        <dd>{formatMoment(madeAt, timeZone)}</dd>
      </dl>
      <a
        className={css.act}
        href={`data:application/x-pem-file;charset=utf-8,${encodeURIComponent(publicKey)}`}
        download={keyFileName(fingerprint)}
      >
        Download the public key (.pem)
      </a>
    </>
  )
}
