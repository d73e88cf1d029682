import { useQuery } from '@tanstack/react-query'
import { useState, type SubmitEvent } from 'react'
import { Navigate, useLocation } from 'react-router'
import { TextInput } from '../../ui/field.tsx'
import { Hatchings } from '../../ui/hatchings.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { me, useSignIn } from './index.tsx'
import css from './sign-in-page.module.css'

/** Where the shell found nobody signed in, so that signing in leads back there. */
export interface SignInState {
  back: string
}

export function SignInPage() {
  const session = useQuery(me)
  const { state } = useLocation() as { state: SignInState | null }
  if (session.data) return <Navigate to={state?.back ?? '/'} replace />
  return (
    <main className={css.page}>
      <title>Sign in · Glandkeeper</title>
      <Hatchings />
      <SignInDrawing />
      <div className={css.words}>
        <h1>Glandkeeper</h1>
        <p className="soft">The memory of every packed gland of the plant.</p>
        <SignInForm />
      </div>
    </main>
  )
}

function SignInForm() {
  const [signInName, setSignInName] = useState('')
  const [password, setPassword] = useState('')
  const [isTried, setIsTried] = useState(false)
  const signIn = useSignIn()
  const missing = (text: string) => (isTried && text.trim() === '' ? 'Is needed' : undefined)
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    setIsTried(true)
    if (signInName.trim() !== '' && password !== '') signIn.mutate({ signInName, password })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate>
      <TextInput
        label="Sign-in name"
        value={signInName}
        onChange={setSignInName}
        fault={missing(signInName)}
        autoComplete="username"
        maxLength={60}
      />
      <TextInput
        label="Password"
        type="password"
        value={password}
        onChange={setPassword}
        fault={missing(password)}
        autoComplete="current-password"
        maxLength={200}
      />
      {signIn.error && <ProblemNote error={signIn.error} />}
      <button type="submit" className="main" disabled={signIn.isPending}>
        {signIn.isPending ? 'Signing in' : 'Sign in'}
      </button>
    </form>
  )
}

/** A gland in section, to scale for a 45 mm box and a 28 mm stem: the one picture that says what this is about. */
function SignInDrawing() {
  return (
    <svg className={css.drawing} viewBox="0 0 260 300" aria-hidden="true">
      {[false, true].map((isRight) => (
        <g key={String(isRight)} transform={isRight ? 'translate(260 0) scale(-1 1)' : undefined}>
          <rect x="20" y="130" width="65" height="150" className="steel out" />
          {[0, 1, 2, 3, 4].map((ring) => (
            <rect key={ring} x="85" y={180 + ring * 20} width="17" height="20" className="pack out" />
          ))}
          <path d="M30 75H101V180H86V105H30Z" className="steel2 out" />
          <path d="M14 121H80" className="hotline" strokeDasharray="5 3" />
        </g>
      ))}
      <rect x="102" y="20" width="56" height="260" className="paperfill" />
      <path d="M102 20V280M158 20V280" className="out" />
      <path d="M102 20q14 9 28 0t28 0M102 280q14 7 28 0t28 0" className="thin" />
      <path d="M130 6V296" className="centre" />
    </svg>
  )
}
