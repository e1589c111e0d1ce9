import { addDays } from '../platform/calendar-day';
import type { Interval } from './intervals';
import { startOfDay } from './start-of-day';
import type { DutyElsewhere, RecordedOfficial, SlateRecords } from './slate-records';

/** Whole minutes on the way from one place to another. */
export type TravelMinutes = (fromPlaceId: string, toPlaceId: string) => number;

const minuteMs = 60_000;

/**
 * When duties of other slates keep an official from this one, since the solver knows only one slate: on the
 * day itself the duty with the longest way to or from any venue of the slate on both sides; on the days around
 * it also the association's rest, counted from and to home. Errs on the side of leaving free.
 */
export function busyElsewhere(
  official: Pick<RecordedOfficial, 'id' | 'homePlaceId'>,
  records: Pick<SlateRecords, 'elsewhere' | 'policy' | 'timeZone'>,
  slateVenuePlaceIds: readonly string[],
  travelMinutes: TravelMinutes,
): Interval[] {
  const longest = (minutes: readonly number[]) => Math.max(0, ...minutes);
  const ways = (placeId: string | null, otherIds: readonly string[]) =>
    placeId === null
      ? 0
      : longest(otherIds.flatMap((id) => [travelMinutes(placeId, id), travelMinutes(id, placeId)]));
  const homeward = ways(official.homePlaceId, slateVenuePlaceIds);
  return records.elsewhere
    .filter((duty) => duty.officialId === official.id)
    .flatMap((duty) => {
      const onward = ways(duty.placeId, slateVenuePlaceIds);
      const home = official.homePlaceId === null ? 0 : ways(duty.placeId, [official.homePlaceId]);
      const rest = records.policy.minRestMinutes + home + homeward;
      const day = localDay(duty, records.timeZone);
      const from = duty.dutyStartsAt.getTime();
      const to = duty.dutyEndsAt.getTime();
      return [
        { from: from - onward * minuteMs, to: to + onward * minuteMs },
        { from: from - rest * minuteMs, to: day.from },
        { from: day.to, to: to + rest * minuteMs },
      ];
    });
}

/** The most games that the official has elsewhere on any one day. */
export function gamesElsewhereADay(officialId: string, elsewhere: readonly DutyElsewhere[]): number {
  const dates = elsewhere.filter((duty) => duty.officialId === officialId).map((duty) => duty.localDate);
  return Math.max(0, ...dates.map((date) => dates.filter((other) => other === date).length));
}

function localDay(duty: DutyElsewhere, zone: string): Interval {
  return { from: startOfDay(duty.localDate, zone), to: startOfDay(addDays(duty.localDate, 1), zone) };
}
