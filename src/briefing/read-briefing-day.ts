import type { EntityManager } from 'typeorm';
import type { Association } from '../access/association.entity';
import { travelBetween, type PlacedPosition, type TravelEstimate } from '../places/travel-estimate';
import { localParts } from '../platform/local-time';
import { leaveBy } from '../slates/day-journeys';
import { readOfficialDuties, type OfficialDuties, type OfficialDuty } from '../slates/official-days.query';
import type { BriefingDay, BriefingOfficial } from './briefing-input';

const dayMs = 24 * 60 * 60_000;

/** The day of one crew member around a game, or null where they do not hold a seat of it. */
export async function readBriefingDay(
  tx: EntityManager,
  association: Association,
  member: Pick<BriefingOfficial, 'seat' | 'name' | 'isMinor'> & {
    readonly id: string;
    readonly gameId: string;
  },
): Promise<BriefingDay | null> {
  const read = await readOfficialDuties(tx, association, member.id);
  const here = read?.duties.find(({ assignment }) => assignment.gameId === member.gameId);
  if (read === null || here === undefined || here.journey === null) return null;
  const date = dateOf(here);
  const sameDay = read.duties.filter((duty) => dateOf(duty) === date);
  const index = sameDay.indexOf(here);
  const next = sameDay[index + 1] ?? null;
  const last = sameDay.at(-1) ?? here;
  const model = association.travelModel;
  const between = (from: PlacedPosition | null, to: PlacedPosition | null): TravelEstimate | null =>
    from === null || to === null ? null : travelBetween({ from, to }, model, read.legs);
  const wayHome = next === null ? between(here.place, read.home) : null;
  const lastWayHome = between(last.place, read.home);
  return {
    seat: member.seat,
    name: member.name,
    isMinor: member.isMinor,
    journey: here.journey,
    wayHome,
    onward:
      next === null
        ? null
        : {
            venueName: next.venue.name,
            travel: between(here.place, next.place),
            onCourtAt: next.assignment.dutyStartsAt,
          },
    leavesNextDayAt: leavesNextDayAt(read, here, association),
    drivingMinutes: sameDay.reduce((sum, duty) => sum + minutesOf(duty), 0) + (lastWayHome?.minutes ?? 0),
  };
}

/** When the first duty of the next local day makes the official leave home. */
function leavesNextDayAt(read: OfficialDuties, here: OfficialDuty, association: Association): Date | null {
  const today = dateOf(here);
  const next = read.duties.find((duty) => dateOf(duty) > today && duty.journey?.kind === 'from-home');
  if (next?.journey?.kind !== 'from-home') return null;
  if (next.assignment.startsAt.getTime() - here.assignment.startsAt.getTime() > 2 * dayMs) return null;
  const { venueArrivalMinutes, travelMarginMinutes } = association.policy;
  const arriveAt = new Date(next.assignment.startsAt.getTime() - venueArrivalMinutes * 60_000);
  return leaveBy(arriveAt, next.journey.travel, travelMarginMinutes);
}

function dateOf({ assignment, venue }: OfficialDuty): string {
  return localParts(assignment.startsAt, venue.timeZone).date;
}

function minutesOf({ journey }: OfficialDuty): number {
  return journey?.kind === 'from-home' || journey?.kind === 'from-venue' ? journey.travel.minutes : 0;
}
