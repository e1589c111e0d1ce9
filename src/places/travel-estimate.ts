import type { TravelModel } from '../access/association-policy';

/** WGS 84 degrees. */
export interface Position {
  readonly latitude: number;
  readonly longitude: number;
}

/** A place with its position. */
export interface PlacedPosition extends Position {
  readonly id: string;
}

/** What somebody measured between two places. */
export interface MeasuredLeg {
  readonly fromPlaceId: string;
  readonly toPlaceId: string;
  readonly minutes: number;
  readonly metres: number;
  /** Who or what measured it. */
  readonly model: string;
}

/** One way by car. */
export interface TravelEstimate {
  readonly minutes: number;
  readonly metres: number;
  readonly source: 'same-place' | 'measured' | 'estimated';
  /** What the figures rest on, to be named beside them. */
  readonly model: string;
}

/** Mean radius of the Earth (IUGG), in metres. */
const earthRadiusMetres = 6_371_008.8;

/** Great-circle distance on the mean sphere by the haversine formula, in metres; it differs by some tenths of a percent from the ellipsoid. */
export function greatCircleMetres(from: Position, to: Position): number {
  const latitudeFrom = radians(from.latitude);
  const latitudeTo = radians(to.latitude);
  const halfLatitude = Math.sin((latitudeTo - latitudeFrom) / 2);
  const halfLongitude = Math.sin(radians(to.longitude - from.longitude) / 2);
  const h = halfLatitude ** 2 + Math.cos(latitudeFrom) * Math.cos(latitudeTo) * halfLongitude ** 2;
  return 2 * earthRadiusMetres * Math.asin(Math.min(1, Math.sqrt(h)));
}

/** The affine estimate between two different places; metres are rounded to the nearest, minutes upward. */
export function estimateTravel(from: Position, to: Position, model: TravelModel): TravelEstimate {
  const metres = Math.floor(model.circuity * greatCircleMetres(from, to) + 0.5);
  const minutes = model.fixedMinutes + Math.ceil((metres * 60) / (1000 * model.speedKmh));
  return { minutes, metres, source: 'estimated', model: model.name };
}

/** Measured legs by ordered pair of places. */
export type MeasuredLegs = ReadonlyMap<string, MeasuredLeg>;

export function measuredLegs(legs: readonly MeasuredLeg[]): MeasuredLegs {
  return new Map(legs.map((leg) => [legKey(leg.fromPlaceId, leg.toPlaceId), leg]));
}

/**
 * Travel from one place to another: nothing at the same place; else the measured leg of that direction, else of the other
 * direction, else the estimate.
 */
export function travelBetween(
  ends: { readonly from: PlacedPosition; readonly to: PlacedPosition },
  model: TravelModel,
  legs: MeasuredLegs,
): TravelEstimate {
  const { from, to } = ends;
  if (from.id === to.id) return { minutes: 0, metres: 0, source: 'same-place', model: 'same place' };
  const leg = legs.get(legKey(from.id, to.id)) ?? legs.get(legKey(to.id, from.id));
  if (leg === undefined) return estimateTravel(from, to, model);
  const measuredBy = leg.model === '' ? 'measured' : `measured: ${leg.model}`;
  return { minutes: leg.minutes, metres: leg.metres, source: 'measured', model: measuredBy };
}

function legKey(fromPlaceId: string, toPlaceId: string): string {
  return `${fromPlaceId}>${toPlaceId}`;
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
