import { type CompiledSlate } from '../compile';
import { NOBODY, SEAT_FREE, SEAT_KEPT_OPEN } from '../compile/facts';
import { FIT_CHIEF, FIT_UMPIRE } from '../compile/fit-bits';
import { ChangeList } from '../search/change-list';
import { SlateState } from '../search/slate-state';
import { type Holders } from '../tours';

/** The stand-in's own seat goes to somebody else. */
export interface OneMoreChange {
  readonly official: number;
  readonly gives: number;
  readonly to: number;
}

/** Who could take a seat if its holder could not work this game; locks on the seat itself are set aside. */
export interface SeatStandIns {
  readonly seat: number;
  /** Everything else as it is. Ascending. */
  readonly alone: readonly number[];
  /** Others, whose own seat somebody legal then takes (not the former holder); one way for each. Ascending. */
  readonly withOneMore: readonly OneMoreChange[];
}

/** Stand-ins for every seat that is not kept open, filled or not. `holders` must be legal. */
export function listStandIns(slate: CompiledSlate, holders: Holders): readonly SeatStandIns[] {
  return new StandInCount(new SlateState(slate, holders)).all();
}

class StandInCount {
  private readonly changes = new ChangeList();
  private readonly slate: CompiledSlate;
  private readonly takers: (readonly number[] | undefined)[];

  constructor(private readonly state: SlateState) {
    this.slate = state.slate;
    this.takers = new Array<readonly number[] | undefined>(2 * state.slate.gameCount);
  }

  all(): readonly SeatStandIns[] {
    const seats: SeatStandIns[] = [];
    for (let seat = 0; seat < 2 * this.slate.gameCount; seat++) {
      if (this.slate.seatLock[seat] === SEAT_KEPT_OPEN) continue;
      const alone = this.mayRelease(seat) ? this.takersOf(seat) : [];
      seats.push({ seat, alone, withOneMore: this.withOneMore(seat, new Set(alone)) });
    }
    return seats;
  }

  /** Officials who could take the seat beside its present partner, whatever becomes of its holder's tour. */
  private takersOf(seat: number): readonly number[] {
    return (this.takers[seat] ??= this.fitOfficials(seat).filter((official) =>
      this.canTake(seat, official, []),
    ));
  }

  private fitOfficials(seat: number): readonly number[] {
    const game = seat >> 1;
    const bit = (seat & 1) === 0 ? FIT_CHIEF : FIT_UMPIRE;
    const { start, values } = this.slate.officialsOfGame;
    const officials: number[] = [];
    for (let i = start[game]!; i < start[game + 1]!; i++) {
      const official = values[i]!;
      const isFit = (this.slate.fit[official * this.slate.gameCount + game]! & bit) !== 0;
      if (isFit && this.state.holders[seat] !== official) officials.push(official);
    }
    return officials;
  }

  /** Whether the official's own tours allow the seat once they have given up some others, and its crew is legal. */
  private canTake(seat: number, official: number, gives: readonly number[]): boolean {
    const { holders } = this.state;
    const partner = gives.includes(seat ^ 1) ? NOBODY : holders[seat ^ 1]!;
    const isChiefSeat = (seat & 1) === 0;
    if (partner === official) return false;
    if (!gives.includes(seat ^ 1)) {
      const chief = isChiefSeat ? official : partner;
      const umpire = isChiefSeat ? partner : official;
      if (!this.state.suits(seat, chief, umpire)) return false;
    }
    this.changes.clear();
    this.changes.add(seat, official);
    for (const given of gives) this.changes.add(given, NOBODY);
    return this.state.evaluateOfficial(this.changes, official) < Infinity;
  }

  /** With ways longer than their detours, a holder's tour can depend on a game in its middle. */
  private mayRelease(seat: number): boolean {
    const holder = this.state.holders[seat]!;
    if (holder === NOBODY) return true;
    this.changes.clear();
    this.changes.add(seat, NOBODY);
    return this.state.evaluateOfficial(this.changes, holder) < Infinity;
  }

  private withOneMore(seat: number, alone: ReadonlySet<number>): readonly OneMoreChange[] {
    if (!this.mayRelease(seat)) return [];
    const found: OneMoreChange[] = [];
    for (const official of this.fitOfficials(seat)) {
      if (alone.has(official)) continue;
      const change = this.oneMoreFor(seat, official);
      if (change !== null) found.push(change);
    }
    return found;
  }

  private oneMoreFor(seat: number, official: number): OneMoreChange | null {
    for (const gives of this.seatsOf(official)) {
      if (this.slate.seatLock[gives] !== SEAT_FREE || !this.canTake(seat, official, [gives])) continue;
      const to =
        gives === (seat ^ 1) ? this.crewWith(seat, official) : this.someoneElse(gives, seat, official);
      if (to !== NOBODY) return { official, gives, to };
    }
    return null;
  }

  private someoneElse(gives: number, seat: number, official: number): number {
    const former = this.state.holders[seat]!;
    return this.takersOf(gives).find((other) => other !== official && other !== former) ?? NOBODY;
  }

  /** The official changes seats within the crew: somebody who may take the other seat beside them. */
  private crewWith(seat: number, official: number): number {
    const former = this.state.holders[seat]!;
    for (const other of this.fitOfficials(seat ^ 1)) {
      if (other === official || other === former) continue;
      this.changes.clear();
      this.changes.add(seat, official);
      this.changes.add(seat ^ 1, other);
      if (this.state.evaluate(this.changes) < Infinity) return other;
    }
    return NOBODY;
  }

  private seatsOf(official: number): readonly number[] {
    const { first, next } = this.state.tours;
    const seats: number[] = [];
    for (let day = 0; day < this.slate.dayCount; day++) {
      for (let seat = first[official * this.slate.dayCount + day]!; seat >= 0; seat = next[seat]!)
        seats.push(seat);
    }
    return seats;
  }
}
