/** The published measures of a playing court, in metres. */
export interface CourtDimensions {
  readonly edition: string;
  readonly length: number;
  readonly width: number;
  readonly lineWidth: number;
  /** Outer edge. */
  readonly centreCircleRadius: number;
  /** From the inner edge of the end line to the far edge of the free-throw line. */
  readonly freeThrowLineDistance: number;
  readonly freeThrowLineLength: number;
  /** Outer edge of one side line of the restricted area to that of the other. */
  readonly restrictedAreaWidth: number;
  /** From the inner edge of the end line to the point below the centre of the basket. */
  readonly basketDistance: number;
  /** From the point below the basket to the outer edge of the arc. */
  readonly threePointRadius: number;
  /** From the inner edge of the side line to the outer edge of the straight parts. */
  readonly threePointSideDistance: number;
  readonly noChargeRadius: number;
  /** From the inner edge of the end line to the throw-in line, which is drawn opposite the table. */
  readonly throwInLineDistance: number;
  /** From the inner edge of the end line to the face of the backboard. */
  readonly backboardDistance: number;
  readonly backboardWidth: number;
  readonly ringDiameter: number;
}

/**
 * FIBA Official Basketball Rules, Art. 2, read in editions 2018 to 2024. The throw-in line, the backboard and
 * the ring are from memory.
 */
export const fibaCourt: CourtDimensions = {
  edition: 'FIBA Official Basketball Rules 2024, Art. 2',
  length: 28,
  width: 15,
  lineWidth: 0.05,
  centreCircleRadius: 1.8,
  freeThrowLineDistance: 5.8,
  freeThrowLineLength: 3.6,
  restrictedAreaWidth: 4.9,
  basketDistance: 1.575,
  threePointRadius: 6.75,
  threePointSideDistance: 0.9,
  noChargeRadius: 1.25,
  throwInLineDistance: 8.325,
  backboardDistance: 1.2,
  backboardWidth: 1.8,
  ringDiameter: 0.45,
};

/**
 * How far from the end line the outer edges of the three-point arc and of its straight parts meet, metres:
 * basket + √(radius² − corner²).
 */
export function threePointJunction(court: CourtDimensions): number {
  const corner = court.width / 2 - court.threePointSideDistance;
  return court.basketDistance + Math.sqrt(court.threePointRadius ** 2 - corner ** 2);
}
