import { SEAT_NAMES, type Division, type Game, type Policy } from '../problem';
import { sharedFloat64, sharedInt32 } from './arrays';
import { MINUTE_MS, NOBODY, SEAT_FREE, SEAT_KEPT_OPEN, type SlateFacts } from './facts';

/** A game with the figures that order it. */
export interface DatedGame {
  readonly game: Game;
  readonly tipOffMs: number;
  readonly day: string;
}

interface GameIndexes {
  readonly dayIndexByName: ReadonlyMap<string, number>;
  readonly venueIndexById: ReadonlyMap<string, number>;
  readonly teamIndexById: ReadonlyMap<string, number>;
  readonly divisionIds: readonly string[];
}

type GameFacts = Pick<
  SlateFacts,
  | 'gameDay'
  | 'gameVenue'
  | 'gameDivision'
  | 'gameHomeTeam'
  | 'gameAwayTeam'
  | 'gamePriority'
  | 'tipOffMs'
  | 'endMs'
  | 'dutyFromMs'
  | 'dutyToMs'
>;

export function gatherGames(dated: readonly DatedGame[], policy: Policy, indexes: GameIndexes): GameFacts {
  const count = dated.length;
  const divisionIndexById = new Map(indexes.divisionIds.map((id, index) => [id, index]));
  const facts: GameFacts = {
    gameDay: sharedInt32(count),
    gameVenue: sharedInt32(count),
    gameDivision: sharedInt32(count),
    gameHomeTeam: sharedInt32(count),
    gameAwayTeam: sharedInt32(count),
    gamePriority: sharedFloat64(count),
    tipOffMs: sharedFloat64(count),
    endMs: sharedFloat64(count),
    dutyFromMs: sharedFloat64(count),
    dutyToMs: sharedFloat64(count),
  };
  dated.forEach(({ game, tipOffMs, day }, g) => {
    facts.gameDay[g] = indexes.dayIndexByName.get(day)!;
    facts.gameVenue[g] = indexes.venueIndexById.get(game.venue)!;
    facts.gameDivision[g] = divisionIndexById.get(game.division)!;
    facts.gameHomeTeam[g] = indexes.teamIndexById.get(game.home)!;
    facts.gameAwayTeam[g] = indexes.teamIndexById.get(game.away)!;
    facts.gamePriority[g] = game.priority;
    facts.tipOffMs[g] = tipOffMs;
    facts.endMs[g] = tipOffMs + game.durationMinutes * MINUTE_MS;
    facts.dutyFromMs[g] = tipOffMs - policy.arrivalLeadMinutes * MINUTE_MS;
    facts.dutyToMs[g] = tipOffMs + (game.durationMinutes + policy.wrapUpMinutes) * MINUTE_MS;
  });
  return facts;
}

/** Locks and published officials by seat. */
export function gatherSeats(
  dated: readonly DatedGame[],
  officialIndexById: ReadonlyMap<string, number>,
): Pick<SlateFacts, 'seatLock' | 'seatPublished'> {
  const seatLock = sharedInt32(2 * dated.length).fill(SEAT_FREE);
  const seatPublished = sharedInt32(2 * dated.length).fill(NOBODY);
  dated.forEach(({ game }, g) => {
    SEAT_NAMES.forEach((name, side) => {
      const lock = game.locked?.[name];
      if (lock === null) seatLock[2 * g + side] = SEAT_KEPT_OPEN;
      else if (lock !== undefined) seatLock[2 * g + side] = officialIndexById.get(lock)!;
      const published = game.published?.[name];
      if (published !== undefined) seatPublished[2 * g + side] = officialIndexById.get(published)!;
    });
  });
  return { seatLock, seatPublished };
}

type DivisionFacts = Pick<
  SlateFacts,
  'divisionMinLevel' | 'divisionTargetLevel' | 'pairingStart' | 'pairingCost'
>;

export function gatherDivisions(
  divisionIds: readonly string[],
  divisions: readonly Division[],
): DivisionFacts {
  const divisionById = new Map(divisions.map((division) => [division.id, division]));
  const used = divisionIds.map((id) => divisionById.get(id)!);
  const divisionMinLevel = sharedFloat64(2 * used.length);
  const divisionTargetLevel = sharedFloat64(2 * used.length);
  const pairingStart = sharedInt32(used.length + 1);
  used.forEach((division, index) => {
    divisionMinLevel.set([division.chiefMinLevel, division.umpireMinLevel], 2 * index);
    divisionTargetLevel.set([division.chiefTargetLevel, division.umpireTargetLevel], 2 * index);
    pairingStart[index + 1] = pairingStart[index]! + division.pairingCost.length;
  });
  const pairingCost = sharedFloat64(pairingStart[used.length]!);
  used.forEach((division, index) => pairingCost.set(division.pairingCost, pairingStart[index]));
  return { divisionMinLevel, divisionTargetLevel, pairingStart, pairingCost };
}
