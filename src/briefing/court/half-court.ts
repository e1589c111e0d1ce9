import type { CourtDimensions } from './court-dimensions';

/**
 * A place on the half court, metres. The origin is the middle of the end line's inner edge; `x` grows to the
 * right when one looks from the end line to the centre line, `y` grows towards the centre line.
 */
export interface CourtPoint {
  readonly x: number;
  readonly y: number;
}

export type CourtMarkName =
  | 'boundary'
  | 'centre-line'
  | 'centre-circle'
  | 'restricted-area'
  | 'free-throw-line'
  | 'three-point-line'
  | 'no-charge-semicircle'
  | 'throw-in-line'
  | 'backboard'
  | 'ring';

/** A stroke of the drawing: straight from point to point, save where a radius bends the way to the next point. */
export interface CourtMark {
  readonly name: CourtMarkName;
  /** Middle of the stroke, so that its published edge falls on the published figure. */
  readonly points: readonly CourtStrokePoint[];
  /** Metres. */
  readonly strokeWidth: number;
}

export interface CourtStrokePoint extends CourtPoint {
  /** The way here from the point before is an arc of this radius that bulges towards the centre line (`far`) or the end line (`near`). */
  readonly arc?: { readonly radius: number; readonly bulge: 'far' | 'near' };
}

/**
 * The lines of half a court, to scale.
 *
 * @param throwInSide on which side, seen from the end line, the throw-in line lies: opposite the scorer's table
 */
export function halfCourtMarks(court: CourtDimensions, throwInSide: 'left' | 'right'): CourtMark[] {
  const stroke = court.lineWidth;
  const half = stroke / 2;
  const side = court.width / 2;
  const centre = court.length / 2;
  const lane = court.restrictedAreaWidth / 2 - half;
  const freeThrow = court.freeThrowLineDistance - half;
  const shot = court.freeThrowLineLength / 2;
  const outward = throwInSide === 'left' ? -1 : 1;
  const mark = (
    name: CourtMarkName,
    points: readonly CourtStrokePoint[],
    strokeWidth = stroke,
  ): CourtMark => ({
    name,
    points,
    strokeWidth,
  });
  return [
    // The boundary is measured to its inner edge: the stroke lies outside.
    mark('boundary', [
      { x: -side - half, y: centre },
      { x: -side - half, y: -half },
      { x: side + half, y: -half },
      { x: side + half, y: centre },
    ]),
    mark('centre-line', [
      { x: -side, y: centre },
      { x: side, y: centre },
    ]),
    mark('centre-circle', semicircle({ x: 0, y: centre }, court.centreCircleRadius - half, 'near')),
    mark('restricted-area', [
      { x: -lane, y: 0 },
      { x: -lane, y: freeThrow },
      { x: lane, y: freeThrow },
      { x: lane, y: 0 },
    ]),
    mark('free-throw-line', [
      { x: -shot, y: freeThrow },
      { x: shot, y: freeThrow },
    ]),
    mark('three-point-line', threePointStroke(court)),
    // Measured to its inner edge (from memory), with straight parts back to the backboard's face.
    mark('no-charge-semicircle', noChargeStroke(court)),
    mark('throw-in-line', [
      { x: outward * side, y: court.throwInLineDistance - half },
      { x: outward * (side + 0.15), y: court.throwInLineDistance - half },
    ]),
    mark('backboard', [
      { x: -court.backboardWidth / 2, y: court.backboardDistance },
      { x: court.backboardWidth / 2, y: court.backboardDistance },
    ]),
    mark('ring', [
      ...semicircle({ x: 0, y: court.basketDistance }, court.ringDiameter / 2, 'far'),
      {
        x: -court.ringDiameter / 2,
        y: court.basketDistance,
        arc: { radius: court.ringDiameter / 2, bulge: 'near' },
      },
    ]),
  ];
}

function threePointStroke(court: CourtDimensions): CourtStrokePoint[] {
  const half = court.lineWidth / 2;
  const corner = court.width / 2 - court.threePointSideDistance - half;
  const radius = court.threePointRadius - half;
  const meet = court.basketDistance + Math.sqrt(radius ** 2 - corner ** 2);
  return [
    { x: -corner, y: 0 },
    { x: -corner, y: meet },
    { x: corner, y: meet, arc: { radius, bulge: 'far' } },
    { x: corner, y: 0 },
  ];
}

function noChargeStroke(court: CourtDimensions): CourtStrokePoint[] {
  const radius = court.noChargeRadius + court.lineWidth / 2;
  return [
    { x: -radius, y: court.backboardDistance },
    ...semicircle({ x: 0, y: court.basketDistance }, radius, 'far'),
    { x: radius, y: court.backboardDistance },
  ];
}

function semicircle(centre: CourtPoint, radius: number, bulge: 'far' | 'near'): CourtStrokePoint[] {
  return [
    { x: centre.x - radius, y: centre.y },
    { x: centre.x + radius, y: centre.y, arc: { radius, bulge } },
  ];
}
