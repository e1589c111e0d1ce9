import type { PlacedPosition } from '../places/travel-estimate';
import type { Assignment } from '../slates/assignment.entity';
import type { Journey } from '../slates/day-journeys';

/** Everything that one official's feed is made from. */
export interface FeedInput {
  readonly association: { readonly name: string; readonly slug: string; readonly language: string };
  /** Address of the service, without a trailing slash. */
  readonly publicUrl: string;
  readonly policy: { readonly venueArrivalMinutes: number; readonly travelMarginMinutes: number };
  readonly entries: readonly FeedEntry[];
}

/** One assignment as the official was told it, and what helps them to get there. */
export interface FeedEntry {
  readonly assignment: Pick<
    Assignment,
    | 'uid'
    | 'sequence'
    | 'seat'
    | 'startsAt'
    | 'endsAt'
    | 'dutyStartsAt'
    | 'reply'
    | 'endReason'
    | 'createdAt'
    | 'revisedAt'
  >;
  readonly game: {
    readonly id: string;
    readonly number: string;
    readonly status: 'TENTATIVE' | 'CONFIRMED' | 'CANCELLED';
    readonly updatedAt: Date;
    readonly division: string;
    readonly home: string;
    readonly away: string;
  };
  readonly venue: {
    readonly name: string;
    readonly address: string;
    readonly town: string;
    readonly timeZone: string;
    readonly place: PlacedPosition | null;
    /** Null where the game is now at another venue than the official was told. */
    readonly court: string | null;
    readonly entrance: string;
    readonly parking: string;
    readonly changingRoom: string;
  };
  /** Null while the other seat is open. A minor stays unnamed: whoever has the address can read the feed. */
  readonly partner: { readonly givenName: string; readonly isMinor: boolean } | null;
  /** Null for an assignment that has ended. */
  readonly journey: Journey | null;
}
