export type PressureClass = 150 | 300 | 600 | 900 | 1500

/** °C, then bar above atmosphere of class 150, 300, 600, 900, 1500. */
export type RatingRow = readonly [
  temperature: number,
  class150: number,
  class300: number,
  class600: number,
  class900: number,
  class1500: number,
]

export const pressureClasses: readonly PressureClass[] = [150, 300, 600, 900, 1500]

/**
 * Carbon steel of material group 1.1. The first row holds down to -29 °C.
 *
 * @source SRC-570 public tabulations of Table 2-1.1 (docs/sources.md)
 */
export const groupOneOne: readonly RatingRow[] = [
  [38, 19.6, 51.1, 102.1, 153.2, 255.3],
  [50, 19.2, 50.1, 100.2, 150.4, 250.6],
  [100, 17.7, 46.6, 93.2, 139.8, 233],
  [150, 15.8, 45.1, 90.2, 135.2, 225.4],
  [200, 13.8, 43.8, 87.6, 131.4, 219],
  [250, 12.1, 41.9, 83.9, 125.8, 209.7],
  [300, 10.2, 39.8, 79.6, 119.5, 199.1],
  [325, 9.3, 38.7, 77.4, 116.1, 193.6],
  [350, 8.4, 37.6, 75.1, 112.7, 187.8],
  [375, 7.4, 36.4, 72.7, 109.1, 181.8],
  [400, 6.5, 34.7, 69.4, 104.2, 173.6],
  [425, 5.5, 28.8, 57.5, 86.3, 143.8],
  [450, 4.6, 23, 46, 69, 115],
  [475, 3.7, 17.4, 34.9, 52.3, 87.2],
  [500, 2.8, 11.8, 23.5, 35.3, 58.8],
  [538, 1.4, 5.9, 11.8, 17.7, 29.5],
]
