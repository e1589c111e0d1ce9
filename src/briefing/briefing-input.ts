import type { AssociationPolicy } from '../access/association-policy';
import type { PlayingRules } from '../games/playing-rules';
import type { TravelEstimate } from '../places/travel-estimate';
import type { Venue } from '../places/venue.entity';
import type { Journey } from '../slates/day-journeys';
import type { SeatName } from '../slates/seat-name';

/** Everything that the briefing of one game is made from. */
export interface BriefingInput {
  readonly association: {
    readonly name: string;
    readonly language: string;
    readonly emergencyNumber: string;
    /** Where the assignor reads; null where the association has not said. */
    readonly replyAddress: string | null;
  };
  readonly policy: Pick<
    AssociationPolicy,
    | 'arrivalLeadMinutes'
    | 'wrapUpMinutes'
    | 'minRestMinutes'
    | 'venueArrivalMinutes'
    | 'travelMarginMinutes'
    | 'ruleEdition'
  >;
  readonly game: {
    readonly number: string;
    readonly status: 'TENTATIVE' | 'CONFIRMED' | 'CANCELLED';
    /** Tip-off as the crew was told it; as the game has it now while nobody has been told. */
    readonly startsAt: Date;
    /** Tip-off as the game has it now. */
    readonly startsAtNow: Date;
    readonly durationMinutes: number;
    readonly note: string;
    readonly division: string;
    readonly court: string | null;
    readonly home: BriefingTeam;
    readonly away: BriefingTeam;
  };
  readonly playingRules: PlayingRules;
  /** Where the crew was told to go. */
  readonly venue: Pick<
    Venue,
    | 'name'
    | 'address'
    | 'town'
    | 'timeZone'
    | 'entrance'
    | 'changingRoom'
    | 'tableSide'
    | 'parking'
    | 'hazards'
    | 'emergencyAddress'
    | 'defibrillator'
    | 'firstAid'
    | 'nearestHospital'
  >;
  /** True while the game stands at another venue than the crew was told. */
  readonly venueHasChanged: boolean;
  readonly crew: readonly BriefingOfficial[];
  /** Whether the reader may see how to reach the crew: the crew itself and assignors. */
  readonly showsContacts: boolean;
  /** The days of those crew members whose way from home the reader may see: their own, or all for an assignor. */
  readonly days: readonly BriefingDay[];
}

export interface BriefingTeam {
  readonly name: string;
  /** Of the shirts in this game; empty while nobody has entered it. */
  readonly colour: string;
}

export interface BriefingOfficial {
  readonly seat: SeatName;
  readonly name: string;
  /** On the day of the game. */
  readonly isMinor: boolean;
  readonly phone: string;
  readonly sharesPhone: boolean;
  readonly guardianName: string;
  readonly guardianContact: string;
  readonly reply: 'NEEDS-ACTION' | 'ACCEPTED' | 'DECLINED';
}

/** One official's day around the game. */
export interface BriefingDay {
  readonly seat: SeatName;
  readonly name: string;
  readonly isMinor: boolean;
  readonly journey: Journey;
  /** Null when another duty follows that day, or when a position is missing. */
  readonly wayHome: TravelEstimate | null;
  /** The duty that follows on the same day. */
  readonly onward: {
    readonly venueName: string;
    /** Null where a position is missing; in the same building it takes no time. */
    readonly travel: TravelEstimate | null;
    readonly onCourtAt: Date;
  } | null;
  /** When the next day’s first duty makes them leave home; null when there is none, or its way is not known. */
  readonly leavesNextDayAt: Date | null;
  /** All driving of the day, home to home, as far as it is known. */
  readonly drivingMinutes: number;
}
