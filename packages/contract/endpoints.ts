import { showApiDocument } from './api-document.ts'
import { addArea, changeArea, listAreas } from './areas.ts'
import { showBoard, showBoardSummary } from './board.ts'
import { listCalendarAddresses, makeCalendarAddress, readCalendar, retireCalendarAddress } from './calendars.ts'
import { showCalibration } from './calibration.ts'
import {
  addCrew,
  addDaysOff,
  changeAreaWalk,
  changeCrew,
  listAreaWalks,
  listCrews,
  listDaysOff,
  removeDaysOff,
  retireCrew,
} from './crews.ts'
import { printCutCard, showCutCard } from './cut-cards.ts'
import { showDueLooks } from './due-looks.ts'
import type { Endpoint } from './endpoint.ts'
import { sendEvents } from './events.ts'
import {
  cancelProof,
  checkEvidence,
  countEvidence,
  exportEvidence,
  exportEvidenceCsv,
  printEvidence,
  proveChain,
  showChain,
  showSiteKey,
} from './evidence.ts'
import { askForFit, showFit } from './forecasts.ts'
import { showHealth } from './health.ts'
import { applyImport, badRowsOfImport, cancelImport, listImports, mapImport, showImport, startImport } from './imports.ts'
import { printJobPack, printOutagePack } from './job-packs.ts'
import { printLabels } from './labels.ts'
import { showLeakLosses } from './leak-losses.ts'
import { addLeakRule, changeLeakRule, listLeakRules, monitorValves, showRegulated } from './leak-rules.ts'
import { cancelLeakStudy, makeLeakStudy, showLeakStudy } from './leak-study.ts'
import { listLeaks, printLeakHistory, showLeakHistory, showLeaksByMonth } from './leaks.ts'
import { exportLog, showLog } from './log.ts'
import { addOutage, callOffOutage, changeOutage, endOutage, listOutages, reviewOutage } from './outages.ts'
import { comparePackings } from './packing-lives.ts'
import { addFamily, advisePacking, changeFamily, listFamilies } from './packings.ts'
import { addPerson, changePerson, listPeople, signIn, signOut, whoAmI } from './people.ts'
import { sendPhoto, showPhoto, showThumbnail } from './photos.ts'
import { showPocket } from './pocket.ts'
import {
  cancelRepackPlanning,
  compareRepackPlans,
  dropRepackPlan,
  listRepackPlans,
  makeRepackPlan,
  showRepackPlan,
  showRepackPlanning,
  takeRepackPlan,
} from './repack-plans.ts'
import { listPlannedRepacks } from './planned-repacks.ts'
import { moveRepack, pinRepack, unpinRepack } from './repack-pins.ts'
import {
  cancelPlanning,
  dropPlan,
  listVisits,
  makePlan,
  moveBlock,
  pinVisit,
  showMoves,
  showPlanning,
  showPlans,
  takePlan,
  unpinVisit,
} from './round-plans.ts'
import { addStop, changeRound, closeRound, listRounds, makeRound, printRound, makeRoundsOfPlan, showCarry } from './rounds.ts'
import { confirmSetting, listSettings } from './settings.ts'
import { changeSite } from './sites.ts'
import { addStockItem, changeStockItem, listStock, listStockMovements, moveStock, showStockOutlook } from './stores.ts'
import { showKit } from './kits.ts'
import { addValve, changeValve, retireValve, showValve } from './valves.ts'

/** Every endpoint there is. A test fails when the server has forgotten one, or has one that is not here. */
export const endpoints = {
  signIn,
  whoAmI,
  signOut,
  listPeople,
  addPerson,
  changePerson,
  changeSite,
  listAreas,
  addArea,
  changeArea,
  showBoard,
  showBoardSummary,
  showValve,
  addValve,
  changeValve,
  retireValve,
  showCutCard,
  printCutCard,
  printLabels,
  sendEvents,
  listRounds,
  makeRound,
  makeRoundsOfPlan,
  changeRound,
  addStop,
  closeRound,
  showCarry,
  printRound,
  listCrews,
  addCrew,
  changeCrew,
  retireCrew,
  listDaysOff,
  addDaysOff,
  removeDaysOff,
  listAreaWalks,
  changeAreaWalk,
  showDueLooks,
  showPlans,
  showPlanning,
  makePlan,
  cancelPlanning,
  takePlan,
  dropPlan,
  showMoves,
  listVisits,
  moveBlock,
  pinVisit,
  unpinVisit,
  listOutages,
  addOutage,
  changeOutage,
  endOutage,
  callOffOutage,
  reviewOutage,
  listRepackPlans,
  showRepackPlanning,
  makeRepackPlan,
  cancelRepackPlanning,
  showRepackPlan,
  takeRepackPlan,
  dropRepackPlan,
  listPlannedRepacks,
  moveRepack,
  pinRepack,
  unpinRepack,
  compareRepackPlans,
  listStock,
  addStockItem,
  changeStockItem,
  moveStock,
  listStockMovements,
  showStockOutlook,
  showKit,
  printJobPack,
  printOutagePack,
  listCalendarAddresses,
  makeCalendarAddress,
  retireCalendarAddress,
  readCalendar,
  showPocket,
  sendPhoto,
  showPhoto,
  showThumbnail,
  listImports,
  startImport,
  showImport,
  mapImport,
  applyImport,
  cancelImport,
  badRowsOfImport,
  listFamilies,
  addFamily,
  changeFamily,
  advisePacking,
  listSettings,
  confirmSetting,
  listLeaks,
  showLeaksByMonth,
  showLeakHistory,
  printLeakHistory,
  showLeakStudy,
  makeLeakStudy,
  cancelLeakStudy,
  showLeakLosses,
  comparePackings,
  listLeakRules,
  addLeakRule,
  changeLeakRule,
  showRegulated,
  monitorValves,
  exportEvidence,
  exportEvidenceCsv,
  printEvidence,
  countEvidence,
  showSiteKey,
  checkEvidence,
  showChain,
  proveChain,
  cancelProof,
  showLog,
  exportLog,
  showFit,
  askForFit,
  showCalibration,
  showHealth,
  showApiDocument,
} as const satisfies Record<string, Endpoint>
