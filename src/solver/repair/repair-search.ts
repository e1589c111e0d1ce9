import { NOBODY } from '../compile/facts';
import { type Clash, type TourGap, clashOfCrew, clashOfOfficial, firstClash, seatsBetween } from './clashes';
import { type PossibleHolders } from './fit';
import { AS_PUBLISHED, KEPT, VACANT, type WorkingSlate } from './working-slate';

/** How far one pass of the search may go. */
export interface PassLimits {
  /** At most so many people are disturbed. */
  readonly peopleMax: number;
  /** At most so many seats are left open. */
  readonly openedMax: number;
  /** For each vacant seat only so many officials are tried, the cheapest; null for all of them. */
  readonly width: number | null;
  /** Gives up after so many steps: officials tried for a seat. */
  readonly stepsMax: number;
}

/** Called at each legal repair, which stands in the working slate at that moment. */
export type OnRepair = (working: WorkingSlate) => void;

/**
 * Depth-first search for repairs within limits. At a broken rule one of the seats that break it has to change
 * hands, and the search branches over them; at a vacant seat it branches over the officials who could take
 * it. Each later branch keeps the seats of the earlier ones as published, so that branches do not overlap.
 *
 * Without a limit on width the pass is exhaustive: undoing any change of a repair that it leaves out disturbs
 * nobody new, so that among the repairs with fewest people there is always one in which every change is
 * forced by a vacant seat or a broken rule, and these are all visited.
 */
export class RepairSearch {
  steps = 0;
  private limits: PassLimits = { peopleMax: 0, openedMax: 0, width: null, stepsMax: 0 };
  private passEnd = 0;
  private isCutShort = false;

  constructor(
    private readonly working: WorkingSlate,
    private readonly possible: PossibleHolders,
    private readonly rootGames: readonly number[],
    private readonly rootOfficials: readonly number[],
    private readonly onRepair: OnRepair,
    private readonly isStopped: () => boolean,
  ) {}

  /** True when everything within the limits was looked at. */
  pass(limits: PassLimits): boolean {
    this.limits = limits;
    this.passEnd = this.steps + limits.stepsMax;
    this.isCutShort = false;
    if (this.isWithinLimits()) this.explore(this.rootGames, this.rootOfficials);
    return !this.isCutShort;
  }

  private mustStop(): boolean {
    if (this.isCutShort) return true;
    this.steps++;
    this.isCutShort = this.steps > this.passEnd || (this.steps % STEPS_PER_LOOK === 0 && this.isStopped());
    return this.isCutShort;
  }

  private isWithinLimits(): boolean {
    const { working, limits } = this;
    return working.disturbed.length <= limits.peopleMax && working.opened <= limits.openedMax;
  }

  /** Goes on from the working slate; of its crews and officials only the given ones may break rules. */
  private explore(games: readonly number[], officials: readonly number[]): void {
    const clash = firstClash(this.working, games, officials);
    if (clash !== null) {
      this.branchOnClash(clash, games, officials);
      return;
    }
    const seat = this.scarcestVacantSeat();
    if (seat < 0) this.onRepair(this.working);
    else this.branchOnSeat(seat);
  }

  private branchOnClash(clash: Clash, games: readonly number[], officials: readonly number[]): void {
    const { working } = this;
    const kept: number[] = [];
    for (const seat of clash.seats) {
      if (this.mustStop()) break;
      if (!working.isUndecided(seat)) continue;
      const { cost } = working;
      working.vacate(seat);
      if (this.isWithinLimits()) this.explore(games, officials.concat(working.published[seat]!));
      working.undoVacate(seat, cost);
      working.status[seat] = KEPT;
      kept.push(seat);
    }
    if (clash.gap !== null) this.insertBetween(clash.gap, games, officials);
    for (const seat of kept) working.status[seat] = AS_PUBLISHED;
  }

  private insertBetween(gap: TourGap, games: readonly number[], officials: readonly number[]): void {
    const { working } = this;
    const { official } = gap;
    for (const seat of seatsBetween(working.slate, gap)) {
      if (this.mustStop()) return;
      const isVacant = working.status[seat] === VACANT;
      if (working.published[seat] === official || !(isVacant || working.isUndecided(seat))) continue;
      const { cost } = working;
      if (!isVacant) working.vacate(seat);
      this.tryOfficial(seat, official, games, [...officials, working.published[seat]!]);
      if (!isVacant) working.undoVacate(seat, cost);
    }
  }

  /** The vacant seat that the fewest officials could take; −1 when no seat is vacant. */
  private scarcestVacantSeat(): number {
    let scarcest = -1;
    let fewest = Infinity;
    for (const seat of this.working.vacant) {
      const count = this.possible.of(seat).length;
      if (count >= fewest) continue;
      fewest = count;
      scarcest = seat;
    }
    return scarcest;
  }

  private branchOnSeat(seat: number): void {
    const { working, limits } = this;
    for (const official of this.officialsFor(seat)) {
      if (this.mustStop()) return;
      if (official !== working.published[seat]) this.tryOfficial(seat, official, [], []);
    }
    if (working.opened < limits.openedMax && working.slate.seatLock[seat]! < 0)
      this.tryOfficial(seat, NOBODY, [], []);
  }

  private officialsFor(seat: number): ArrayLike<number> & Iterable<number> {
    const { working, limits } = this;
    const all = this.possible.of(seat);
    // With nobody left to disturb, only those who are disturbed already come into question.
    const isFull = working.disturbed.length === limits.peopleMax;
    const open = isFull
      ? working.disturbed.filter((official) => all.includes(official)).sort((a, b) => a - b)
      : all;
    return limits.width === null ? open : this.cheapest(seat, open, limits.width);
  }

  /** Those who fit in without a clash, cheapest first, then some who have to give something away for it. */
  private cheapest(seat: number, officials: Iterable<number>, width: number): number[] {
    const { working } = this;
    const free: Priced[] = [];
    const clashing: Priced[] = [];
    for (const official of officials) {
      if (official === working.published[seat]) continue;
      if (this.mustStop()) break;
      const { cost } = working;
      const position = working.fill(seat, official);
      const priced = { official, cost: working.cost };
      const fits = clashOfCrew(working, seat >> 1) === null && clashOfOfficial(working, official) === null;
      working.undoFill(seat, position, cost);
      (fits ? free : clashing).push(priced);
    }
    const best = (list: Priced[], count: number) =>
      list
        .sort((a, b) => a.cost - b.cost || a.official - b.official)
        .slice(0, count)
        .map(({ official }) => official);
    const clashingMax = free.length === 0 ? Math.max(1, width >> 1) : width >> 1;
    return [...best(free, width), ...best(clashing, clashingMax)];
  }

  private tryOfficial(
    seat: number,
    official: number,
    games: readonly number[],
    officials: readonly number[],
  ): void {
    const { working } = this;
    const { cost } = working;
    const position = working.fill(seat, official);
    if (this.isWithinLimits()) this.explore([seat >> 1, ...games], [official, ...officials]);
    working.undoFill(seat, position, cost);
  }
}

interface Priced {
  readonly official: number;
  readonly cost: number;
}

const STEPS_PER_LOOK = 1024;
