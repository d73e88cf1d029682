import type { RowFault } from '@glandkeeper/contract/imports'
import type { BadRow } from './bad-rows.ts'
import type { JudgedRow } from './judge.ts'

/** The screen lists so many; the file of bad rows has all of them. */
const FAULTS_SHOWN = 500

/** Counts of a judgement so far, and its bad rows. */
export class Tally {
  rowCount = 0
  goodCount = 0
  faultCount = 0
  readonly faults: RowFault[] = []
  readonly badRows: BadRow[] = []

  add(rows: readonly JudgedRow<unknown>[]): void {
    for (const { raw, faults, occurrence } of rows) {
      this.rowCount += 1
      if (faults.length === 0) this.goodCount += 1
      else this.badRows.push({ raw, faults, occurrence })
      this.faultCount += faults.length
      if (this.faults.length < FAULTS_SHOWN) this.faults.push(...faults.slice(0, FAULTS_SHOWN - this.faults.length))
    }
  }

  get counts() {
    return {
      rowCount: this.rowCount,
      goodCount: this.goodCount,
      badCount: this.badRows.length,
      faultCount: this.faultCount,
    }
  }
}
