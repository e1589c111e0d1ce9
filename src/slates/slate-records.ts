import type { AssociationPolicy, SlateWeights, TravelModel } from '../access/association-policy';
import type { Conflict } from '../games/conflict.entity';
import type { Division } from '../games/division.entity';
import type { Game } from '../games/game.entity';
import type { Place } from '../places/place.entity';
import type { TravelLeg } from '../places/travel-leg.entity';
import type { Venue } from '../places/venue.entity';
import type { Official } from '../roster/official.entity';
import type { Assignment } from './assignment.entity';
import type { Interval } from './intervals';
import type { PastSeat } from './season-history';
import type { Seat } from './seat.entity';
import type { Slate } from './slate.entity';

/** When an official is free, and when they would rather not be asked. */
export interface FreeTime {
  readonly available: readonly Interval[];
  readonly reluctant: readonly Interval[];
}

/** A duty that an official owes to a game of another slate. */
export interface DutyElsewhere {
  readonly officialId: string;
  /** Null where the venue has no position. */
  readonly placeId: string | null;
  readonly localDate: string;
  readonly dutyStartsAt: Date;
  readonly dutyEndsAt: Date;
}

/** An official, with the one thing that depends on the day. */
export type RecordedOfficial = Pick<
  Official,
  | 'id'
  | 'number'
  | 'givenName'
  | 'familyName'
  | 'level'
  | 'mayBeChief'
  | 'homePlaceId'
  | 'maxHomeMinutes'
  | 'maxGamesPerDay'
  | 'maxGamesPerSlate'
  | 'wishedGamesPerSlate'
  | 'certificateExpiresOn'
  | 'active'
> & {
  /** By age on the slate's first day: who comes of age during the slate still counts as a minor in all of it. */
  readonly isMinor: boolean;
};

export type RecordedGame = Pick<
  Game,
  | 'id'
  | 'number'
  | 'divisionId'
  | 'venueId'
  | 'courtId'
  | 'localDate'
  | 'startsAt'
  | 'durationMinutes'
  | 'homeTeamId'
  | 'awayTeamId'
  | 'priority'
  | 'status'
>;

/** Everything an association's database knows that bears on one slate, as plain data. */
export interface SlateRecords {
  readonly slate: Pick<Slate, 'id' | 'name' | 'fromDate' | 'toDate' | 'version'>;
  /** IANA zone in which the association counts days. */
  readonly timeZone: string;
  readonly policy: AssociationPolicy;
  readonly weights: SlateWeights;
  readonly travelModel: TravelModel;
  readonly officials: readonly RecordedOfficial[];
  readonly freeTimeByOfficialId: ReadonlyMap<string, FreeTime>;
  readonly conflicts: readonly Pick<
    Conflict,
    'officialId' | 'teamId' | 'venueId' | 'otherOfficialId' | 'since' | 'until'
  >[];
  readonly places: readonly Pick<Place, 'id' | 'latitude' | 'longitude'>[];
  /** Measured ones only. */
  readonly legs: readonly Pick<TravelLeg, 'fromPlaceId' | 'toPlaceId' | 'minutes' | 'metres' | 'model'>[];
  readonly venues: readonly Pick<Venue, 'id' | 'code' | 'name' | 'placeId'>[];
  readonly divisions: readonly Pick<
    Division,
    | 'id'
    | 'code'
    | 'chiefMinLevel'
    | 'umpireMinLevel'
    | 'chiefTargetLevel'
    | 'umpireTargetLevel'
    | 'pairingCost'
  >[];
  readonly games: readonly RecordedGame[];
  readonly seats: readonly Pick<Seat, 'gameId' | 'seat' | 'officialId' | 'locked'>[];
  /** Live ones of the slate's games. */
  readonly assignments: readonly Pick<
    Assignment,
    'id' | 'gameId' | 'seat' | 'officialId' | 'venueId' | 'startsAt' | 'endsAt'
  >[];
  /** Tip-offs that officials of this slate were offered and declined, as they were told them. */
  readonly declined: readonly Pick<Assignment, 'officialId' | 'startsAt'>[];
  readonly elsewhere: readonly DutyElsewhere[];
  /** Season start to the day before the slate, and the recent days before it. */
  readonly past: readonly PastSeat[];
}
