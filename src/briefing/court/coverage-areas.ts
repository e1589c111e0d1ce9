import type { CourtDimensions } from './court-dimensions';
import type { CourtPoint } from './half-court';

export type CoverageNumber = 1 | 2 | 3 | 4 | 5 | 6;

/** Who watches an area first: `trail`, `lead`, or both inside the arc. */
export type CoverageOwner = 'trail' | 'lead' | 'shared';

/** One of the six rectangles of a half court. */
export interface CoverageArea {
  readonly number: CoverageNumber;
  readonly owner: CoverageOwner;
  readonly from: CourtPoint;
  readonly to: CourtPoint;
}

/** Where an official of the half court sets up. */
export interface OfficialPlace {
  readonly who: 'trail' | 'lead';
  readonly at: CourtPoint;
}

/** On which side, seen from the end line, the trail works; the lead works on the other. */
export type TrailSide = 'left' | 'right';

/**
 * The six coverage areas of two-person mechanics as a schematic: the trail watches 1, 2, 3 and 6, the lead 4,
 * and 5 (the restricted area) is shared, as is 6 inside the arc (older FIBA slides). Their exact edges are not
 * published; here the restricted area and the free-throw line, drawn on, divide the half court.
 */
export function coverageAreas(court: CourtDimensions, trailSide: TrailSide): CoverageArea[] {
  const lane = court.restrictedAreaWidth / 2;
  const side = court.width / 2;
  const near = { from: 0, to: court.freeThrowLineDistance };
  const far = { from: court.freeThrowLineDistance, to: court.length / 2 };
  const columns = { left: [-side, -lane], middle: [-lane, lane], right: [lane, side] } as const;
  const area = (
    number: CoverageNumber,
    owner: CoverageOwner,
    column: readonly [number, number],
    row: { readonly from: number; readonly to: number },
  ): CoverageArea => ({
    number,
    owner,
    from: { x: column[0], y: row.from },
    to: { x: column[1], y: row.to },
  });
  const [trail, lead] = trailSide === 'left' ? (['left', 'right'] as const) : (['right', 'left'] as const);
  return [
    area(1, 'trail', columns[trail], far),
    area(2, 'trail', columns.middle, far),
    area(3, 'trail', columns[lead], far),
    area(4, 'lead', columns[lead], near),
    area(5, 'shared', columns.middle, near),
    area(6, 'trail', columns[trail], near),
  ];
}

/**
 * Set-up places (common practice, no source): the lead behind the end line, midway between the three-point line
 * and the restricted area; the trail midway between the centre line and the top of the three-point line; on
 * opposite sides, so that all ten players are between them.
 */
export function setUpPlaces(court: CourtDimensions, trailSide: TrailSide): OfficialPlace[] {
  const corner = court.width / 2 - court.threePointSideDistance;
  const arcTop = court.basketDistance + court.threePointRadius;
  const towardsTrail = trailSide === 'left' ? -1 : 1;
  return [
    {
      who: 'trail',
      at: { x: towardsTrail * (court.width / 4), y: (arcTop + court.length / 2) / 2 },
    },
    {
      who: 'lead',
      at: { x: -towardsTrail * ((corner + court.restrictedAreaWidth / 2) / 2), y: -0.6 },
    },
  ];
}
