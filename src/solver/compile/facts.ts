import { type Weights } from '../problem';
import { type RaggedRows } from './arrays';
import { type TravelTable } from '../travel';

/**
 * A slate problem as flat arrays of numbers; every id has become an index, every instant a number of
 * milliseconds since 1970. The order does not depend on the order of the file:
 *
 * - game index g: by day, then tip-off, then id. A tour therefore lists its games by rising index.
 * - official index o, by id.
 * - seat index s = 2·g for the chief and 2·g + 1 for the umpire of game g.
 * - day d: the local dates that have games, in order.
 * - venue v: the places that have games, by id. Division, team: in order of first appearance by game index.
 * - class k: a distinct (level, minor) among the officials; what pair costs, order (H9) and minors (H8) depend on.
 *
 * All arrays live in shared memory and are only read once compiled.
 */
export interface SlateFacts {
  readonly gameCount: number;
  readonly officialCount: number;
  readonly dayCount: number;
  readonly venueCount: number;
  readonly classCount: number;

  readonly gameIds: readonly string[];
  readonly officialIds: readonly string[];
  readonly venueIds: readonly string[];
  readonly teamIds: readonly string[];
  readonly divisionIds: readonly string[];
  /** Local dates, `2026-03-28`. */
  readonly dayNames: readonly string[];

  /** Minutes; see `Policy`. */
  readonly arrivalLeadMinutes: number;
  readonly wrapUpMinutes: number;
  readonly sameVenueGapMinutes: number;
  readonly minRestMinutes: number;
  readonly weights: Weights;

  // By game.
  readonly gameDay: Int32Array;
  readonly gameVenue: Int32Array;
  readonly gameDivision: Int32Array;
  readonly gameHomeTeam: Int32Array;
  readonly gameAwayTeam: Int32Array;
  readonly gamePriority: Float64Array;
  readonly tipOffMs: Float64Array;
  /** Tip-off plus duration. */
  readonly endMs: Float64Array;
  /** Duty: from the crew's arrival to the end of wrap-up. */
  readonly dutyFromMs: Float64Array;
  readonly dutyToMs: Float64Array;
  /** Games of day d are dayStart[d] … dayStart[d + 1] − 1. */
  readonly dayStart: Int32Array;
  /**
   * A clock set back over midnight makes a local date begin, end and begin again, so that a game of an
   * "earlier" day may tip off later. H10 then has to look at the instants of each pair.
   */
  readonly daysInterleave: boolean;

  // By seat.
  /** `SEAT_FREE`, `SEAT_KEPT_OPEN`, or the official who is locked into it. */
  readonly seatLock: Int32Array;
  /** The official published for the seat, or −1. */
  readonly seatPublished: Int32Array;

  // By division; seat-wise figures at 2·division + (0 chief, 1 umpire).
  readonly divisionMinLevel: Float64Array;
  readonly divisionTargetLevel: Float64Array;
  /** Pairing cost by level gap: `pairingCost[pairingStart[division] + min(gap, last)]`. */
  readonly pairingStart: Int32Array;
  readonly pairingCost: Float64Array;

  // By official.
  readonly officialLevel: Float64Array;
  /** 1 when the official may be chief. */
  readonly officialMayBeChief: Uint8Array;
  /** 1 for a minor. */
  readonly officialMinor: Uint8Array;
  readonly officialClass: Int32Array;
  readonly maxHomeMinutes: Float64Array;
  /** At most the number of seats, whatever the file says. */
  readonly maxGamesPerDay: Int32Array;
  readonly maxGames: Int32Array;
  readonly priorGames: Float64Array;
  readonly targetGames: Float64Array;
  /** Availability, merged and in order: windows availableStart[o] … availableStart[o + 1] − 1. */
  readonly availableStart: Int32Array;
  readonly availableFromMs: Float64Array;
  readonly availableToMs: Float64Array;
  readonly reluctantStart: Int32Array;
  readonly reluctantFromMs: Float64Array;
  readonly reluctantToMs: Float64Array;
  /** Rows of ascending team, venue and official indexes; avoidance of officials stands on both sides. */
  readonly avoidTeams: RaggedRows;
  readonly avoidVenues: RaggedRows;
  readonly avoidOfficials: RaggedRows;
  /** Rows of ascending team indexes with, at the same position, the games seen. */
  readonly recentTeams: RaggedRows;
  readonly recentTeamCounts: Float64Array;
  /** Rows of ascending official indexes, on both sides, with the larger of the two sides' figures. */
  readonly recentPartners: RaggedRows;
  readonly recentPartnerCounts: Float64Array;

  /** By venue: where it lies on a flat map, in degrees of latitude; good enough to cut a region in two. */
  readonly venueX: Float64Array;
  readonly venueY: Float64Array;

  // By class.
  readonly classLevel: Float64Array;
  readonly classMinor: Uint8Array;

  /** Entry from · venueCount + to. */
  readonly betweenVenues: TravelTable;
  /** Home of official o to venue v at o · venueCount + v. */
  readonly outward: TravelTable;
  /** Venue v to the home of official o at o · venueCount + v. The same arrays as `outward` when no measured leg differs from its way back. */
  readonly homeward: TravelTable;
}

/** Nobody is locked into the seat and it is not kept open. */
export const SEAT_FREE = -2;
/** The seat stays open on purpose, at no cost. */
export const SEAT_KEPT_OPEN = -1;
/** No official: an open seat in a slate, no published official. */
export const NOBODY = -1;

export const MINUTE_MS = 60_000;
