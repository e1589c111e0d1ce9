import { type Violation } from '../answer';
import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY, SEAT_FREE } from '../compile/facts';
import { judgeLocks } from '../rules/judge-slate';
import { type Holders } from '../tours';
import { ChangeList } from './change-list';
import { fillGreedily } from './construct';
import { SeatCandidates } from './seat-candidates';
import { SlateState } from './slate-state';

export type StartSlate =
  | { readonly ok: true; readonly holders: Holders; readonly cost: number; readonly openSeats: number }
  /** The locks cannot be kept legally. */
  | { readonly ok: false; readonly violations: readonly Violation[] };

/** Gives up looking for partners of locked minors after so many wrong turns. */
const WRONG_TURNS_MAX = 20_000;

/** A first legal slate: the locks, partners for minors who are locked in alone, and then whatever fits. */
export function startSlate(slate: CompiledSlate): StartSlate {
  const violations = judgeLocks(slate);
  if (violations.length > 0) return { ok: false, violations };
  const locked = slate.seatLock.map((lock) => (lock >= 0 ? lock : NOBODY));
  const state = new SlateState(slate, locked);
  const candidates = new SeatCandidates(slate);
  const halfLocked = seatsBesideLockedMinors(slate, locked);
  const stuck = new PartnerSearch(state, candidates).fill(halfLocked);
  if (stuck !== null) return { ok: false, violations: describeStuck(slate, locked, stuck) };
  fillGreedily(state, candidates);
  return { ok: true, holders: state.holders.slice(), cost: state.sumCost(), openSeats: state.openCount };
}

function seatsBesideLockedMinors(slate: CompiledSlate, locked: Holders): number[] {
  return [...locked.keys()].filter((seat) => {
    const partner = locked[seat ^ 1]!;
    return slate.seatLock[seat] === SEAT_FREE && partner !== NOBODY && slate.officialMinor[partner] === 1;
  });
}

/** Fills given seats by depth-first search, the seat with the fewest legal officials first. */
class PartnerSearch {
  private readonly changes = new ChangeList();
  private wrongTurns = 0;

  constructor(
    private readonly state: SlateState,
    private readonly candidates: SeatCandidates,
  ) {}

  /** Null when all are filled; otherwise seats that cannot all be. */
  fill(seats: readonly number[]): readonly number[] | null {
    if (seats.length === 0) return null;
    const choices = seats.map((seat) => ({ seat, officials: this.legalOfficials(seat) }));
    choices.sort((a, b) => a.officials.length - b.officials.length || a.seat - b.seat);
    const { seat, officials } = choices[0]!;
    if (officials.length === 0) return [seat];
    const rest = seats.filter((other) => other !== seat);
    const before = this.state.holders.slice();
    for (const official of officials) {
      this.changes.clear();
      this.changes.add(seat, official);
      this.state.apply(this.changes, this.state.evaluate(this.changes));
      if (this.fill(rest) === null) return null;
      if (++this.wrongTurns > WRONG_TURNS_MAX) break;
      this.state.reset(before);
    }
    return seats;
  }

  private legalOfficials(seat: number): number[] {
    return [...this.candidates.of(seat)].filter((official) => {
      this.changes.clear();
      this.changes.add(seat, official);
      return this.state.evaluate(this.changes) < Infinity;
    });
  }
}

function describeStuck(slate: CompiledSlate, locked: Holders, seats: readonly number[]): Violation[] {
  const alone = seats.length === 1;
  return seats.map((seat) => {
    const minor = slate.officialIds[locked[seat ^ 1]!]!;
    const message = alone
      ? `${minor} is a minor, and nobody may legally take the other seat`
      : `${minor} is a minor; there are not enough partners for the ${seats.length} games locked like this`;
    return { rule: 'H8', game: slate.gameIds[seat >> 1]!, officials: [minor], message };
  });
}
