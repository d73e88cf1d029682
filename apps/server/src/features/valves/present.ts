import type { Valve, ValveInput } from '@glandkeeper/contract/valves'
import type { AreaModel, ValveModel } from '../../generated/sqlite/models.ts'
import { glandOfRow } from '../glands/index.ts'

export type ValveRow = ValveModel & { readonly area: AreaModel }

/** A valve's row in the terms of the contract. */
export function presentValve(row: ValveRow): Valve {
  return {
    ...presentInput(row),
    valveId: row.id,
    areaName: row.area.name,
    revision: row.revision,
    retiredAt: row.retiredAt?.toISOString() ?? null,
  }
}

/** Only what a person may change of it. Words were checked by the contract when they were written. */
export function presentInput(row: ValveRow): ValveInput {
  return {
    tag: row.tag,
    description: row.description,
    areaCode: row.area.code,
    walkPosition: row.walkPosition,
    level: row.level,
    east: row.eastM as Valve['east'],
    north: row.northM as Valve['north'],
    service: row.service,
    fluid: row.fluid,
    phase: row.phase as Valve['phase'],
    temperature: row.temperatureC as Valve['temperature'],
    pressure: row.pressureBar as Valve['pressure'],
    valveKind: row.valveKind as Valve['valveKind'],
    stemMovement: row.stemMovement as Valve['stemMovement'],
    isolationBoundary: row.isolationBoundary,
    isolatesOnLine: row.isolatesOnLine,
    access: row.access as Valve['access'],
    criticality: row.criticality as Valve['criticality'],
    gland: glandOfRow(row),
  }
}
