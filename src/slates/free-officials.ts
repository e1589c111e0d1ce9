import { addDays } from '../platform/calendar-day';
import { busyElsewhere, gamesElsewhereADay, type TravelMinutes } from './busy-elsewhere';
import { subtractIntervals, type Interval } from './intervals';
import type { PlayedGame } from './map-games';
import type { MappingFault } from './mapping-fault';
import type { RecordedOfficial, SlateRecords } from './slate-records';
import { startOfDay } from './start-of-day';

/** An official who takes part, with the times that are left to be asked for. */
export interface FreeOfficial extends RecordedOfficial {
  readonly homePlaceId: string;
  readonly available: readonly Interval[];
  readonly gamesADayMax: number;
}

const minuteMs = 60_000;

/** The officials who can be asked, in order of id; inactive ones are passed over, faulty ones reported. */
export function freeOfficials(
  records: SlateRecords,
  games: readonly PlayedGame[],
  travelMinutes: TravelMinutes,
  faults: MappingFault[],
): FreeOfficial[] {
  const venuePlaceIds = [...new Set(games.map((game) => game.placeId))].sort();
  const active = records.officials
    .filter((official) => official.active)
    .sort((left, right) => (left.id < right.id ? -1 : 1));
  const free = active.flatMap((official) => {
    const { homePlaceId, certificateExpiresOn: expiresOn } = official;
    const report = (severity: MappingFault['severity'], code: MappingFault['code'], words: string) => {
      const message = `${official.givenName} ${official.familyName} ${words}`;
      faults.push({ severity, code, message, link: { kind: 'official', id: official.id } });
    };
    if (homePlaceId === null) {
      report(
        'left-out',
        'official-without-home',
        'takes no part: no home position. Enter where they set out from.',
      );
      return [];
    }
    if (expiresOn !== null && expiresOn < records.slate.fromDate) {
      report('left-out', 'certificate-expired', `takes no part: the certificate expired on ${expiresOn}.`);
      return [];
    }
    const declared = records.freeTimeByOfficialId.get(official.id)?.available ?? [];
    if (declared.length === 0) {
      report('note', 'official-without-availability', 'has not said when they are free on these days.');
    }
    const cuts = [
      ...busyElsewhere(official, records, venuePlaceIds, travelMinutes),
      ...declinedMinutes(official.id, records),
      ...(expiresOn === null
        ? []
        : [{ from: startOfDay(addDays(expiresOn, 1), records.timeZone), to: Infinity }]),
    ];
    const gamesADayMax = official.maxGamesPerDay - gamesElsewhereADay(official.id, records.elsewhere);
    return [
      {
        ...official,
        homePlaceId,
        available: subtractIntervals(declared, cuts),
        gamesADayMax: Math.max(0, gamesADayMax),
      },
    ];
  });
  if (free.length === 0) {
    faults.push({
      severity: 'stops',
      code: 'no-officials',
      message: 'No official can be asked. Enter officials with a home position and a level.',
      link: { kind: 'slate', id: records.slate.id },
    });
  }
  return free;
}

/**
 * Who declined a tip-off is not asked for it again: its first minute is no longer free. Should the game move,
 * it is another tip-off and they may be asked anew; games that follow in the same hall stay open to them.
 */
function declinedMinutes(officialId: string, records: SlateRecords): Interval[] {
  return records.declined
    .filter((declined) => declined.officialId === officialId)
    .map(({ startsAt }) => ({ from: startsAt.getTime(), to: startsAt.getTime() + minuteMs }));
}
