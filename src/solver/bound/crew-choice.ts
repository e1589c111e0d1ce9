import { type CompiledSlate } from '../compile';
import { SEAT_FREE, SEAT_KEPT_OPEN } from '../compile/facts';
import { FIT_CHIEF, FIT_UMPIRE } from '../compile/fit-bits';
import { openSeatCost } from '../costs/open';
import { pairingCost } from '../costs/pairing';

/**
 * The crews that a game may have when officials are known only by class (level, minor), with the cost that
 * depends on the pair alone: pairing and open seats. Order (H9) and minors (H8) are judged by class, so that
 * they are exact here. Crews of game g are start[g] … start[g + 1] − 1; class `classCount` is nobody.
 */
export interface CrewChoices {
  readonly start: Int32Array;
  readonly chiefClass: Int32Array;
  readonly umpireClass: Int32Array;
  /** Pairing cost, without open seats. */
  readonly cost: Float64Array;
  /** Open-seat cost; apart, because a proof of coverage weighs it differently. */
  readonly openCost: Float64Array;
}

export function listCrewChoices(slate: CompiledSlate): CrewChoices {
  const start = new Int32Array(slate.gameCount + 1);
  const chiefs: number[] = [];
  const umpires: number[] = [];
  const costs: number[] = [];
  const openCosts: number[] = [];
  for (let game = 0; game < slate.gameCount; game++) {
    const umpireClasses = classesFor(slate, game, 1);
    for (const chief of classesFor(slate, game, 0)) {
      for (const umpire of umpireClasses) {
        const cost = crewCost(slate, game, chief, umpire);
        if (cost === null) continue;
        chiefs.push(chief);
        umpires.push(umpire);
        costs.push(cost);
        openCosts.push(
          (chief === slate.classCount ? openSeatCost(slate, 2 * game) : 0) +
            (umpire === slate.classCount ? openSeatCost(slate, 2 * game + 1) : 0),
        );
      }
    }
    start[game + 1] = chiefs.length;
  }
  return {
    start,
    chiefClass: Int32Array.from(chiefs),
    umpireClass: Int32Array.from(umpires),
    cost: Float64Array.from(costs),
    openCost: Float64Array.from(openCosts),
  };
}

/** Classes with somebody who may take the seat, and nobody (`classCount`) where the lock allows it. */
function classesFor(slate: CompiledSlate, game: number, side: 0 | 1): readonly number[] {
  const lock = slate.seatLock[2 * game + side]!;
  if (lock === SEAT_KEPT_OPEN) return [slate.classCount];
  if (lock !== SEAT_FREE) return [slate.officialClass[lock]!];
  const needed = side === 0 ? FIT_CHIEF : FIT_UMPIRE;
  const found = new Set<number>();
  const { start, values } = slate.officialsOfGame;
  for (let row = start[game]!; row < start[game + 1]!; row++) {
    const official = values[row]!;
    if ((slate.fit[official * slate.gameCount + game]! & needed) !== 0)
      found.add(slate.officialClass[official]!);
  }
  return [...[...found].sort((a, b) => a - b), slate.classCount];
}

function crewCost(slate: CompiledSlate, game: number, chief: number, umpire: number): number | null {
  const nobody = slate.classCount;
  const minor = (k: number): boolean => k !== nobody && slate.classMinor[k] === 1;
  if (chief === nobody || umpire === nobody) return minor(chief) || minor(umpire) ? null : 0;
  if (minor(chief) && minor(umpire)) return null;
  if (slate.classLevel[chief]! < slate.classLevel[umpire]!) return null;
  return pairingCost(slate, slate.gameDivision[game]!, slate.classLevel[chief]!, slate.classLevel[umpire]!);
}
