import { groupedBy } from './grouped-by';

/** One seat of a game that was, or will have been, worked before the slate begins. */
export interface PastSeat {
  readonly gameId: string;
  readonly officialId: string;
  /** `YYYY-MM-DD`, the game's local date. */
  readonly localDate: string;
  readonly homeTeamId: string;
  readonly awayTeamId: string;
}

/** What an official brings into a slate from the season so far. */
export interface OfficialHistory {
  /** Games since the season began. */
  readonly priorGames: number;
  /** By the other official's id: recent games worked together. */
  readonly recentPartners: Readonly<Record<string, number>>;
  /** By team id: recent games in which the official saw it. */
  readonly recentTeams: Readonly<Record<string, number>>;
}

export const noHistory: OfficialHistory = { priorGames: 0, recentPartners: {}, recentTeams: {} };

/**
 * Sums up the season by official id. Only games before the slate's first day count; of these, the ones from
 * `seasonFrom` on are prior games, and the ones from `recentFrom` on make recent partners and teams, in
 * whichever season they were.
 *
 * @param options dates as `YYYY-MM-DD`
 */
export function seasonHistory(
  past: readonly PastSeat[],
  options: { readonly seasonFrom: string; readonly recentFrom: string; readonly before: string },
): Map<string, OfficialHistory> {
  const counted = past.filter((seat) => seat.localDate < options.before);
  const crewByGame = groupedBy(counted, (seat) => seat.gameId);
  const seatsByOfficial = groupedBy(counted, (seat) => seat.officialId);
  return new Map(
    [...seatsByOfficial].map(([officialId, seats]) => {
      const recent = seats.filter((seat) => seat.localDate >= options.recentFrom);
      const partners = recent.flatMap((seat) =>
        (crewByGame.get(seat.gameId) ?? [])
          .map((other) => other.officialId)
          .filter((id) => id !== officialId),
      );
      return [
        officialId,
        {
          priorGames: seats.filter((seat) => seat.localDate >= options.seasonFrom).length,
          recentPartners: countById(partners),
          recentTeams: countById(recent.flatMap((seat) => [seat.homeTeamId, seat.awayTeamId])),
        },
      ];
    }),
  );
}

/** In order of id, so that the same history always makes the same file. */
function countById(ids: readonly string[]): Record<string, number> {
  const counts = new Map<string, number>();
  for (const id of [...ids].sort()) counts.set(id, (counts.get(id) ?? 0) + 1);
  return Object.fromEntries(counts);
}
