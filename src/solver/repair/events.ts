import { type Game, type Official, type Place } from '../problem';

/** The limits of an official that may change after publication; those given replace the old ones. */
export const CHANGEABLE_LIMITS = [
  'maxHomeMinutes',
  'maxGamesPerDay',
  'maxGames',
  'available',
  'reluctant',
  'avoidTeams',
  'avoidVenues',
  'avoidOfficials',
] as const;

export type ChangedLimits = Partial<Pick<Official, (typeof CHANGEABLE_LIMITS)[number]>>;

/** Something that happened to a published slate. Instants are ISO 8601 with an offset or `Z`. */
export type SlateEvent =
  /** The official is not free from `from` (default: ever since) to `to` (default: for good). */
  | {
      readonly kind: 'officialOut';
      readonly official: string;
      readonly from?: string;
      readonly to?: string;
    }
  | {
      readonly kind: 'gameMoved';
      readonly game: string;
      readonly tipOff: string;
      readonly durationMinutes?: number;
    }
  | { readonly kind: 'venueChanged'; readonly game: string; readonly venue: string }
  | { readonly kind: 'gameAdded'; readonly game: Omit<Game, 'published'> }
  | { readonly kind: 'gameCancelled'; readonly game: string }
  | { readonly kind: 'limitsChanged'; readonly official: string; readonly limits: ChangedLimits }
  /** Somewhere that no game was before, so that a later event can name it. */
  | { readonly kind: 'placeAdded'; readonly place: Place };

/** The file format `slate-events/1`; events happen in the order given. */
export interface SlateEvents {
  readonly format: 'slate-events/1';
  readonly events: readonly SlateEvent[];
}
