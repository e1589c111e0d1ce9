import { type CompiledSlate } from '../compile';
import { SEAT_FREE } from '../compile/facts';
import { FIT_CHIEF, FIT_UMPIRE } from '../compile/fit-bits';
import { changeCost } from '../costs/change';
import { overLevelCost } from '../costs/over-level';
import { isReluctant } from '../costs/reluctant';
import { seenTeamGames } from '../costs/team-repeat';
import { backHomeMs, leavesHomeMs } from '../rules/h10-rest';
import { NOBODY } from '../compile/facts';

/**
 * The games that each official may work, with what each of the two seats would cost them alone: the nodes
 * of the graph in which one official's weekend is a path. Stops of official o are start[o] … start[o + 1] − 1,
 * by ascending game. A seat that the official may not take costs `Infinity`.
 */
export interface Stops {
  readonly start: Int32Array;
  readonly game: Int32Array;
  /** Cost of the chief's seat at 2·stop and of the umpire's at 2·stop + 1. */
  readonly seatCost: Float64Array;
  /** Cost of the way from home to the game and back. */
  readonly outwardCost: Float64Array;
  readonly homewardCost: Float64Array;
  /** Instants at which the official would leave home for the game as a first, and be back from it as a last. */
  readonly leavesMs: Float64Array;
  readonly backMs: Float64Array;
}

/** Lists the stops of every official; locked seats are stops of nobody but the official locked into them. */
export function listStops(slate: CompiledSlate): Stops {
  const { gamesOfOfficial: games } = slate;
  const start = new Int32Array(slate.officialCount + 1);
  const capacity = games.values.length;
  const stops: Stops = {
    start,
    game: new Int32Array(capacity),
    seatCost: new Float64Array(2 * capacity),
    outwardCost: new Float64Array(capacity),
    homewardCost: new Float64Array(capacity),
    leavesMs: new Float64Array(capacity),
    backMs: new Float64Array(capacity),
  };
  let count = 0;
  for (let official = 0; official < slate.officialCount; official++) {
    for (let row = games.start[official]!; row < games.start[official + 1]!; row++) {
      const game = games.values[row]!;
      const chief = stopSeatCost(slate, official, 2 * game);
      const umpire = stopSeatCost(slate, official, 2 * game + 1);
      if (chief === Infinity && umpire === Infinity) continue;
      const way = official * slate.venueCount + slate.gameVenue[game]!;
      stops.game[count] = game;
      stops.seatCost[2 * count] = chief;
      stops.seatCost[2 * count + 1] = umpire;
      stops.outwardCost[count] = (slate.weights.travelPerKm * slate.outward.metres[way]!) / 1000;
      stops.homewardCost[count] = (slate.weights.travelPerKm * slate.homeward.metres[way]!) / 1000;
      stops.leavesMs[count] = leavesHomeMs(slate, official, game);
      stops.backMs[count] = backHomeMs(slate, official, game);
      count++;
    }
    start[official + 1] = count;
  }
  return stops;
}

/**
 * What a seat costs this official whoever the partner is. Keeping a published seat earns the price of a
 * change back, because that price is counted once for every published seat beforehand (`publishedSeatsCost`).
 */
function stopSeatCost(slate: CompiledSlate, official: number, seat: number): number {
  const game = seat >> 1;
  const lock = slate.seatLock[seat]!;
  if (lock !== SEAT_FREE && lock !== official) return Infinity;
  const needed = (seat & 1) === 0 ? FIT_CHIEF : FIT_UMPIRE;
  if ((slate.fit[official * slate.gameCount + game]! & needed) === 0) return Infinity;
  const { weights } = slate;
  return (
    overLevelCost(slate, official, seat) +
    weights.teamRepeat * seenTeamGames(slate, official, game) +
    (isReluctant(slate, official, game) ? weights.reluctant : 0) -
    (slate.seatPublished[seat] === official ? weights.change : 0)
  );
}

/** The change cost of a slate in which nobody keeps a published seat. */
export function publishedSeatsCost(slate: CompiledSlate): number {
  let cost = 0;
  for (let seat = 0; seat < 2 * slate.gameCount; seat++) cost += changeCost(slate, seat, NOBODY);
  return cost;
}
