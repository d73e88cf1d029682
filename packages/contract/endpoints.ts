import { addArea, changeArea, listAreas } from './areas.ts'
import { showBoard, showBoardSummary } from './board.ts'
import type { Endpoint } from './endpoint.ts'
import { sendEvents } from './events.ts'
import { showHealth } from './health.ts'
import { applyImport, badRowsOfImport, cancelImport, listImports, mapImport, showImport, startImport } from './imports.ts'
import { signIn, signOut, whoAmI } from './people.ts'
import { addValve, changeValve, retireValve, showValve } from './valves.ts'

/** Every endpoint there is. A server that forgets one, or adds one that is not here, does not start. */
export const endpoints = {
  signIn,
  whoAmI,
  signOut,
  listAreas,
  addArea,
  changeArea,
  showBoard,
  showBoardSummary,
  showValve,
  addValve,
  changeValve,
  retireValve,
  sendEvents,
  listImports,
  startImport,
  showImport,
  mapImport,
  applyImport,
  cancelImport,
  badRowsOfImport,
  showHealth,
} as const satisfies Record<string, Endpoint>
