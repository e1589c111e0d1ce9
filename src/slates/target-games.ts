/** What the season's fair share rests upon, for one official of a slate. */
export interface TargetInput {
  readonly id: string;
  readonly priorGames: number;
  /** Games wished for in a slate; null leaves it to the limits. */
  readonly wishedGames: number | null;
  readonly maxGames: number;
  readonly maxGamesPerDay: number;
  /** Games of the slate that the official's level and availability allow, by local date. */
  readonly playableGamesByDate: ReadonlyMap<string, number>;
}

/**
 * The season target after this slate, by official id; compare it with `priorGames` plus the slate's games.
 *
 * - *appetite* = the wish, at most `maxGames`; without a wish, `maxGames`.
 * - *room* = the most games the slate can bring: per date the smaller of the playable games and
 *   `maxGamesPerDay`, added up, at most the appetite.
 * - *weight* = appetite × playable games ÷ games of the slate: who is free more of the weekend and wishes
 *   more games is due more of them.
 * - *share* = the slate's seats dealt out in proportion to weight, nobody beyond their room; what somebody
 *   has no room for is dealt out again among the others.
 * - *fair so far* = everybody's prior games dealt out in proportion to appetite.
 * - *target* = fair so far + share, but not more than `priorGames` + room: nobody is asked beyond their wish
 *   to catch up. Who has no room has `priorGames` as target, so that an absence costs nothing.
 *
 * The result lies in [0, priorGames + room] and depends on no order. Common practice, no source: the rule is
 * ours.
 */
export function targetGames(
  officials: readonly TargetInput[],
  slate: { readonly games: number; readonly seats: number },
): Map<string, number> {
  const claims = officials.map((official) => claimOf(official, slate.games));
  const shares = dealOut(slate.seats, claims);
  const appetiteTotal = sum(claims.map((claim) => claim.appetite));
  const priorTotal = sum(officials.map((official) => official.priorGames));
  return new Map(
    officials.map((official, index) => {
      const claim = claims[index];
      if (claim === undefined || claim.room === 0) return [official.id, official.priorGames];
      const fairSoFar = appetiteTotal === 0 ? 0 : (priorTotal * claim.appetite) / appetiteTotal;
      const target = Math.min(fairSoFar + (shares[index] ?? 0), official.priorGames + claim.room);
      return [official.id, Math.round(target * 1000) / 1000];
    }),
  );
}

interface Claim {
  readonly appetite: number;
  readonly room: number;
  readonly weight: number;
}

function claimOf(official: TargetInput, games: number): Claim {
  const appetite = Math.min(official.wishedGames ?? official.maxGames, official.maxGames);
  const playable = [...official.playableGamesByDate.values()];
  const withinDays = sum(playable.map((count) => Math.min(count, official.maxGamesPerDay)));
  const weight = games === 0 ? 0 : (appetite * sum(playable)) / games;
  return { appetite, room: Math.min(appetite, withinDays), weight };
}

/**
 * Fills vessels of different width and height with `amount`: all rise together in proportion to weight, and a
 * full one rises no more. Every round fills at least one vessel, so there are at most as many rounds.
 */
function dealOut(amount: number, claims: readonly Claim[]): number[] {
  const shares = claims.map(() => 0);
  let left = amount;
  let open = claims.flatMap((claim, index) => (claim.weight > 0 && claim.room > 0 ? [index] : []));
  while (open.length > 0 && left > 1e-9) {
    const weightOf = (index: number) => claims[index]?.weight ?? 0;
    const roomOf = (index: number) => (claims[index]?.room ?? 0) - (shares[index] ?? 0);
    const weightTotal = sum(open.map(weightOf));
    const fullest = Math.min(...open.map((index) => roomOf(index) / weightOf(index)));
    const rise = Math.min(left / weightTotal, fullest);
    for (const index of open) shares[index] = (shares[index] ?? 0) + rise * weightOf(index);
    left -= rise * weightTotal;
    open = open.filter((index) => roomOf(index) > 1e-9);
  }
  return shares;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
