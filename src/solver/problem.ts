/**
 * The file format `slate-problem/1`: everything the solver needs to know about a set of games and
 * the officials who could work them. Instants are ISO 8601 with an offset or `Z`, durations whole
 * minutes, distances whole metres; a higher level is more experienced.
 *
 * These types describe a problem that `readProblem` has accepted: references resolve, ids are
 * unique, numbers are in range.
 */

/** The two seats of a game, in the order in which they are numbered everywhere in the solver. */
export type SeatName = 'chief' | 'umpire';

export const SEAT_NAMES: readonly [SeatName, SeatName] = ['chief', 'umpire'];

/** From `from` (inclusive) to `to` (exclusive); `from` is always before `to`. */
export interface TimeWindow {
  readonly from: string;
  readonly to: string;
}

/** Prices of the cost terms; all at least 0. */
export interface Weights {
  /** For an open seat, times the game's priority. */
  readonly openSeat: number;
  /** For each kilometre of a tour, home to home. */
  readonly travelPerKm: number;
  /** For the squared distance of an official's games from their target. */
  readonly balance: number;
  /** For each recent game in which the official saw one of the two teams. */
  readonly teamRepeat: number;
  /** For each recent game that the two officials worked together. */
  readonly partnerRepeat: number;
  /** For each level above the seat's target level. */
  readonly overLevel: number;
  /** For a duty in a window the official would rather keep free. */
  readonly reluctant: number;
  /** For a published seat that its official no longer holds. */
  readonly change: number;
}

export interface Policy {
  /** The crew is in the building this long before tip-off. */
  readonly arrivalLeadMinutes: number;
  /** The crew leaves this long after the end of the game. */
  readonly wrapUpMinutes: number;
  /** From the end of a game to the next tip-off at the same venue, at least. */
  readonly sameVenueGapMinutes: number;
  /** At home between the games of two days, at least. */
  readonly minRestMinutes: number;
  readonly weights: Weights;
}

/** A measured way; it also holds for the way back unless that has a leg of its own. */
export interface TravelLeg {
  readonly from: string;
  readonly to: string;
  readonly minutes: number;
  readonly metres: number;
}

/** How ways without a measured leg are estimated from the great circle. */
export interface TravelModel {
  /** Road length over great-circle length, at least 1. */
  readonly circuity: number;
  readonly speedKmh: number;
  /** Added to every way: finding the car and a place to park it. */
  readonly fixedMinutes: number;
  readonly legs?: readonly TravelLeg[];
}

/** A position in degrees, WGS 84. */
export interface Place {
  readonly id: string;
  readonly lat: number;
  readonly lon: number;
}

export interface Division {
  readonly id: string;
  readonly chiefMinLevel: number;
  readonly umpireMinLevel: number;
  readonly chiefTargetLevel: number;
  readonly umpireTargetLevel: number;
  /** Cost by level gap (chief minus umpire); wider gaps take the last entry. Never empty. */
  readonly pairingCost: readonly number[];
}

export interface Official {
  readonly id: string;
  readonly level: number;
  readonly mayBeChief: boolean;
  readonly minor: boolean;
  /** Place id. */
  readonly home: string;
  readonly maxHomeMinutes: number;
  readonly maxGamesPerDay: number;
  readonly maxGames: number;
  readonly available: readonly TimeWindow[];
  readonly reluctant?: readonly TimeWindow[];
  readonly priorGames: number;
  /** Season target after this slate; may be fractional. */
  readonly targetGames: number;
  readonly avoidTeams?: readonly string[];
  readonly avoidVenues?: readonly string[];
  /** Holds both ways round, even when only one side names the other. */
  readonly avoidOfficials?: readonly string[];
  /** Team id to games seen. */
  readonly recentTeams?: Readonly<Record<string, number>>;
  /** Official id to games together; a pair's count is the larger of its two sides' figures. */
  readonly recentPartners?: Readonly<Record<string, number>>;
}

/** An official's id holds the seat; `null` keeps it open on purpose; an absent seat is free. */
export interface LockedSeats {
  readonly chief?: string | null;
  readonly umpire?: string | null;
}

/** Who was told that they hold the seat. */
export interface PublishedSeats {
  readonly chief?: string;
  readonly umpire?: string;
}

export interface Game {
  readonly id: string;
  readonly tipOff: string;
  readonly durationMinutes: number;
  /** Place id. */
  readonly venue: string;
  readonly division: string;
  readonly home: string;
  readonly away: string;
  /** Multiplies the price of an open seat; greater than 0. */
  readonly priority: number;
  readonly locked?: LockedSeats;
  readonly published?: PublishedSeats;
}

export interface SlateProblem {
  readonly format: 'slate-problem/1';
  readonly name: string;
  /** IANA zone; a game's day is the local date of its tip-off in this zone. */
  readonly timeZone: string;
  readonly policy: Policy;
  readonly travel: TravelModel;
  readonly places: readonly Place[];
  readonly divisions: readonly Division[];
  readonly officials: readonly Official[];
  readonly games: readonly Game[];
  /** Free-form and ignored. */
  readonly meta?: unknown;
}
