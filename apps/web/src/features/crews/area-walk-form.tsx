import { type AreaWalk, changeAreaWalk, type Crew } from '@glandkeeper/contract/crews'
import { faultsOf, type Fault } from '@glandkeeper/contract/problem'
import { useState, type SubmitEvent } from 'react'
import { faultBeside, faultsTold } from '../../ui/fault-beside.ts'
import { ChoiceInput, TextInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import css from './crews.module.css'
import { useChangeAreaWalk } from './queries.ts'
import { StairsFields, WayInFields } from './walk-plan-fields.tsx'
import { type WalkDraft, walkDraftOf, walkOfDraft } from './walk-draft.ts'

const THE_PLAN = 'the plan chooses'

interface AreaWalkFormProps {
  walk: AreaWalk
  crews: readonly Crew[]
  onDone: () => void
}

export function AreaWalkForm({ walk, crews, onDone }: AreaWalkFormProps) {
  const [draft, setDraft] = useState(() => walkDraftOf(walk))
  const [found, setFound] = useState<readonly Fault[]>([])
  const save = useChangeAreaWalk(walk.areaCode)
  const told = faultsTold(save.error, found)
  const change = (changed: Partial<WalkDraft>) => {
    setDraft({ ...draft, ...changed })
    // Faults name stairs by their place in the list, which is another now.
    if (changed.stairs && changed.stairs.length !== draft.stairs.length) setFound([])
  }
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    save.reset()
    const body = walkOfDraft(draft)
    const checked = changeAreaWalk.body.safeParse(body)
    setFound(checked.success ? [] : faultsOf(checked.error))
    if (checked.success) save.mutate(body, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={`Change how ${walk.areaName} is walked`}>
      <h3 className={css.formTitle}>
        <span className={css.code}>{walk.areaCode}</span> {walk.areaName}
      </h3>
      <WhoAndHowLong draft={draft} crews={crews} told={told} onChange={change} />
      <WayInFields wayIn={draft.wayIn} told={told} onChange={(wayIn) => change({ wayIn })} />
      <StairsFields stairs={draft.stairs} told={told} onChange={(stairs) => change({ stairs })} />
      {save.error && <ProblemNote error={save.error} />}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={save.isPending}>
          Save the area
        </button>
        <button type="button" onClick={onDone}>
          Leave it as it was
        </button>
      </div>
    </form>
  )
}

interface WhoAndHowLongProps {
  draft: WalkDraft
  crews: readonly Crew[]
  told: readonly Fault[]
  onChange: (changed: Partial<WalkDraft>) => void
}

function WhoAndHowLong({ draft, crews, told, onChange }: WhoAndHowLongProps) {
  const skills = [...new Set(crews.flatMap((crew) => crew.skills))].toSorted()
  return (
    <div className={css.fields}>
      <TextInput
        label="Minutes to set up"
        hint="empty: as the setting says"
        isFigure
        inputMode="numeric"
        value={draft.setUpMinutes}
        onChange={(setUpMinutes) => onChange({ setUpMinutes })}
        fault={faultBeside('setUpMinutes', draft.setUpMinutes, told)}
      />
      <TextInput
        label="Skill asked for"
        hint="one that a crew has; empty: none"
        maxLength={40}
        autoComplete="off"
        suggestions={skills}
        value={draft.skill}
        onChange={(skill) => onChange({ skill })}
        fault={faultBeside('skill', draft.skill, told)}
      />
      <ChoiceInput
        label="Crew"
        value={draft.crewId ?? THE_PLAN}
        choices={[{ value: THE_PLAN, words: THE_PLAN }, ...crews.map(({ crewId, name }) => ({ value: crewId, words: name }))]}
        onChange={(value) => onChange({ crewId: value === THE_PLAN ? null : value })}
        fault={faultBeside('crewId', draft.crewId ?? THE_PLAN, told)}
      />
    </div>
  )
}
