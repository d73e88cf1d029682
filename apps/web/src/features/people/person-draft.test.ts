import type { ListedPerson } from '@glandkeeper/contract/people'
import { expect, test } from 'vitest'
import { changeOf, draftOf, faultsIn, inListOrder, newPersonOf } from './person-draft.ts'

const oakes: ListedPerson = {
  personId: '0197b0a0-0000-7000-8000-000000000001',
  name: 'R. Oakes',
  signInName: 'r.oakes',
  role: 'planner',
  leftAt: null,
}
const gone: ListedPerson = { ...oakes, name: 'A. Birch', leftAt: '2026-05-03T10:00:00Z' }

test('an empty password is left out of a change, so the old one stays', () => {
  expect(changeOf(draftOf(oakes))).toEqual({ name: 'R. Oakes', role: 'planner', hasLeft: false })
  expect(changeOf({ ...draftOf(oakes), password: 'chalk and string' })).toHaveProperty('password', 'chalk and string')
})

test('a new person without a password is faulty, a changed one is not', () => {
  expect(faultsIn({ ...draftOf(oakes) }, true).map(({ pointer }) => pointer)).toEqual(['#/password'])
  expect(faultsIn(draftOf(oakes), false)).toEqual([])
})

test('a short new password is told beside its field', () => {
  expect(faultsIn({ ...draftOf(oakes), password: 'short' }, false)).toEqual([
    { pointer: '#/password', detail: 'Password: at least 10 characters' },
  ])
})

test('a new person starts as fitter and is sent without the switch of those who left', () => {
  expect(newPersonOf(draftOf(null))).toEqual({ name: '', signInName: '', role: 'fitter', password: '' })
})

test('who has left stays so when something else is changed, and stands last', () => {
  expect(changeOf(draftOf(gone)).hasLeft).toBe(true)
  expect(inListOrder([gone, oakes])).toEqual([oakes, gone])
})
