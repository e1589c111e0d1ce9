import { COST_TERMS, type CostBreakdown, type CostTerm } from '../answer';
import { type Official } from '../problem';
import { type Crew, type Season, type TimedGame, type Tours } from './season';

/** The price of the crews, term by term, from the definition. */
export function priceOf(season: Season, crews: readonly Crew[], tours: Tours): CostBreakdown {
  const cost = Object.fromEntries(COST_TERMS.map((term) => [term, 0])) as Record<CostTerm, number>;
  const seatsByOfficial = new Map<Official, number>();
  season.games.forEach((timed, index) => {
    const crew = crews[index]!;
    addCrew(season, timed, crew, cost);
    for (const official of [crew.chief, crew.umpire]) {
      if (official !== null) seatsByOfficial.set(official, (seatsByOfficial.get(official) ?? 0) + 1);
    }
  });
  const { weights } = season.problem.policy;
  for (const official of season.officials.values()) {
    const off = official.priorGames + (seatsByOfficial.get(official) ?? 0) - official.targetGames;
    cost.balance += weights.balance * off ** 2;
  }
  for (const [official, days] of tours) {
    for (const tour of days.values()) {
      const stops = [official.home, ...tour.map(({ game }) => game.venue), official.home];
      const metres = stops.slice(1).reduce((sum, stop, i) => sum + season.ways(stops[i]!, stop).metres, 0);
      cost.travel += (weights.travelPerKm * metres) / 1000;
    }
  }
  const total = Object.values(cost).reduce((sum, amount) => sum + amount, 0);
  return { total, ...cost };
}

function addCrew(
  season: Season,
  timed: TimedGame,
  { chief, umpire }: Crew,
  cost: Record<CostTerm, number>,
): void {
  const { weights } = season.problem.policy;
  const { game, division } = timed;
  for (const [seat, official] of [
    ['chief', chief],
    ['umpire', umpire],
  ] as const) {
    const published = game.published?.[seat];
    if (published !== undefined && published !== official?.id) cost.change += weights.change;
    if (official === null) {
      if (game.locked?.[seat] !== null) cost.open += weights.openSeat * game.priority;
      continue;
    }
    const target = seat === 'chief' ? division.chiefTargetLevel : division.umpireTargetLevel;
    if (official.level > target) cost.overLevel += weights.overLevel * (official.level - target);
    cost.teamRepeat +=
      weights.teamRepeat *
      (countOf(official.recentTeams, game.home) + countOf(official.recentTeams, game.away));
    const disturbed = official.reluctant?.some(
      ({ from, to }) =>
        Math.min(Date.parse(to), timed.dutyTo) - Math.max(Date.parse(from), timed.dutyFrom) > 0,
    );
    if (disturbed === true) cost.reluctant += weights.reluctant;
  }
  if (chief === null || umpire === null) return;
  const gap = Math.max(0, chief.level - umpire.level);
  cost.pairing += division.pairingCost[Math.min(gap, division.pairingCost.length - 1)]!;
  if (chief.id === umpire.id) return;
  const together = Math.max(
    countOf(chief.recentPartners, umpire.id),
    countOf(umpire.recentPartners, chief.id),
  );
  cost.partnerRepeat += weights.partnerRepeat * together;
}

/** Own entries only: an id may be the name of something every object inherits. */
function countOf(counts: Readonly<Record<string, number>> | undefined, id: string): number {
  return counts !== undefined && Object.hasOwn(counts, id) ? counts[id]! : 0;
}
