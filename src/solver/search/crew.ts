import { NOBODY } from '../compile/facts';
import { FIT_RELUCTANT, FIT_SEEN_TEAM } from '../compile/fit-bits';
import { type CompiledSlate } from '../compile/compiled-slate';
import { changeCost } from '../costs/change';
import { openSeatCost } from '../costs/open';
import { overLevelCost } from '../costs/over-level';
import { pairingCost } from '../costs/pairing';
import { gamesTogether } from '../costs/partner-repeat';
import { seenTeamGames } from '../costs/team-repeat';
import { avoidEachOther } from '../rules/h5-conflicts';
import { leavesMinorWithoutAdult } from '../rules/h8-minors';
import { isInOrder } from '../rules/h9-order';

/** Whether the two may share a game, each being fit for their seat; either may be `NOBODY`. */
export function isLegalCrew(slate: CompiledSlate, chief: number, umpire: number): boolean {
  if (leavesMinorWithoutAdult(slate, chief, umpire)) return false;
  if (chief === NOBODY || umpire === NOBODY) return true;
  return chief !== umpire && isInOrder(slate, chief, umpire) && !avoidEachOther(slate, chief, umpire);
}

/** All that a seat costs on its own account: who holds it, or that nobody does. */
export function seatCost(slate: CompiledSlate, seat: number, holder: number): number {
  const change = changeCost(slate, seat, holder);
  if (holder === NOBODY) return change + openSeatCost(slate, seat);
  return change + soloCost(slate, holder, seat);
}

/** What the official costs in this seat whoever stands beside them. */
export function soloCost(slate: CompiledSlate, official: number, seat: number): number {
  const game = seat >> 1;
  const bits = slate.fit[official * slate.gameCount + game]!;
  let cost = overLevelCost(slate, official, seat);
  if ((bits & FIT_RELUCTANT) !== 0) cost += slate.weights.reluctant;
  if ((bits & FIT_SEEN_TEAM) !== 0) cost += slate.weights.teamRepeat * seenTeamGames(slate, official, game);
  return cost;
}

/** What the two cost as a pair, beyond their seats. */
export function pairCost(slate: CompiledSlate, game: number, chief: number, umpire: number): number {
  if (chief === NOBODY || umpire === NOBODY) return 0;
  const levelOf = slate.officialLevel;
  return (
    pairingCost(slate, slate.gameDivision[game]!, levelOf[chief]!, levelOf[umpire]!) +
    slate.weights.partnerRepeat * gamesTogether(slate, chief, umpire)
  );
}

/** Everything a game costs but for its officials' tours and balance. */
export function crewCost(slate: CompiledSlate, game: number, chief: number, umpire: number): number {
  return (
    seatCost(slate, 2 * game, chief) +
    seatCost(slate, 2 * game + 1, umpire) +
    pairCost(slate, game, chief, umpire)
  );
}
