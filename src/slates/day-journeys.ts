import type { TravelModel } from '../access/association-policy';
import {
  travelBetween,
  type MeasuredLegs,
  type PlacedPosition,
  type TravelEstimate,
} from '../places/travel-estimate';

/** One duty of an official as far as the way to it matters. */
export interface JourneyDuty {
  readonly assignmentId: string;
  readonly venueId: string;
  readonly venueName: string;
  /** Where the venue is; null while nobody has entered it. */
  readonly place: PlacedPosition | null;
  /** `YYYY-MM-DD` of tip-off in the venue's zone. */
  readonly localDate: string;
  readonly startsAt: Date;
  /** When the official is free to leave. */
  readonly dutyEndsAt: Date;
}

/** How an official comes to a duty. A way that cannot be estimated says what is missing. */
export type Journey =
  | { readonly kind: 'from-home'; readonly travel: TravelEstimate }
  | { readonly kind: 'from-venue'; readonly from: JourneyDuty; readonly travel: TravelEstimate }
  /** The duty before, that day, is in the same building. */
  | { readonly kind: 'already-there'; readonly from: JourneyDuty }
  | { readonly kind: 'unknown'; readonly missing: 'home position' | 'venue position' };

/**
 * The ways of one official: from home to the first duty of a local day, then from duty to duty.
 *
 * @returns by assignment id
 */
export function dayJourneys(input: {
  readonly duties: readonly JourneyDuty[];
  readonly home: PlacedPosition | null;
  readonly model: TravelModel;
  readonly legs: MeasuredLegs;
}): Map<string, Journey> {
  const { home, model, legs } = input;
  const duties = [...input.duties].sort(
    (left, right) =>
      left.startsAt.getTime() - right.startsAt.getTime() || (left.assignmentId < right.assignmentId ? -1 : 1),
  );
  const journeys = new Map<string, Journey>();
  for (const [index, duty] of duties.entries()) {
    const before = duties[index - 1];
    const from = before?.localDate === duty.localDate ? before : null;
    journeys.set(duty.assignmentId, journeyTo(duty, from));
  }
  return journeys;

  function journeyTo(duty: JourneyDuty, from: JourneyDuty | null): Journey {
    if (from?.venueId === duty.venueId) return { kind: 'already-there', from };
    if (duty.place === null) return { kind: 'unknown', missing: 'venue position' };
    if (from === null) {
      if (home === null) return { kind: 'unknown', missing: 'home position' };
      return { kind: 'from-home', travel: travelBetween({ from: home, to: duty.place }, model, legs) };
    }
    if (from.place === null) return { kind: 'unknown', missing: 'venue position' };
    return {
      kind: 'from-venue',
      from,
      travel: travelBetween({ from: from.place, to: duty.place }, model, legs),
    };
  }
}

/**
 * When to set out so as to be there at an instant: travel, rounded up to whole minutes, and a margin before it.
 */
export function leaveBy(
  arriveAt: Date,
  travel: Pick<TravelEstimate, 'minutes'>,
  marginMinutes: number,
): Date {
  return new Date(arriveAt.getTime() - (Math.ceil(travel.minutes) + marginMinutes) * 60_000);
}
