import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY, SEAT_FREE, SEAT_KEPT_OPEN } from '../compile/facts';
import { type Holders } from '../tours';
import { clashOfCrew, clashOfOfficial } from './clashes';
import { isPossible } from './fit';
import { WorkingSlate } from './working-slate';

/** A published slate with its broken seats vacant: where every repair begins. */
export interface RepairRoot {
  readonly working: WorkingSlate;
  /** Seats that have to change hands whatever is done: their holder cannot have them, or nobody has them yet. */
  readonly brokenSeats: readonly number[];
  /** Those of them whose holder withdrew. */
  readonly excusedSeats: readonly number[];
  /** Games and officials that break rules beyond those seats. */
  readonly games: readonly number[];
  readonly officials: readonly number[];
}

export interface WhatHappened {
  readonly slate: CompiledSlate;
  readonly published: Holders;
  /** Games that nobody was published for because they are new. */
  readonly addedGames: ReadonlySet<number>;
  /** Officials who said that they cannot work; losing a seat they cannot hold is no disturbance to them. */
  readonly withdrawn: ReadonlySet<number>;
}

/** Vacates the broken seats. */
export function repairRoot({ slate, published, addedGames, withdrawn }: WhatHappened): RepairRoot {
  const brokenSeats: number[] = [];
  const keptOpen: number[] = [];
  const excused = new Uint8Array(published.length);
  published.forEach((holder, seat) => {
    const lock = slate.seatLock[seat]!;
    if (lock === SEAT_KEPT_OPEN) {
      if (holder !== NOBODY) keptOpen.push(seat);
    } else if (holder === NOBODY) {
      if (lock !== SEAT_FREE || addedGames.has(seat >> 1)) brokenSeats.push(seat);
    } else if ((lock !== SEAT_FREE && lock !== holder) || !isPossible(slate, holder, seat)) {
      brokenSeats.push(seat);
      if (withdrawn.has(holder) && !isPossible(slate, holder, seat)) excused[seat] = 1;
    }
  });
  const working = new WorkingSlate(slate, published, excused);
  for (const seat of [...brokenSeats, ...keptOpen]) working.vacate(seat);
  for (const seat of keptOpen) working.fill(seat, NOBODY);
  const games = Array.from({ length: slate.gameCount }, (_, game) => game);
  const officials = Array.from({ length: slate.officialCount }, (_, official) => official);
  return {
    working,
    brokenSeats,
    excusedSeats: brokenSeats.filter((seat) => excused[seat] === 1),
    games: games.filter((game) => clashOfCrew(working, game) !== null),
    officials: officials.filter((official) => clashOfOfficial(working, official) !== null),
  };
}
