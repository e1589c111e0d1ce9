import { type CompiledSlate } from '../../compile/compiled-slate';
import { NOBODY, SEAT_FREE } from '../../compile/facts';
import { type SeededRandom } from '../../random';
import { type ChangeList } from '../change-list';
import { NearbyGames } from '../nearby-games';
import { SeatCandidates } from '../seat-candidates';
import { type SlateState } from '../slate-state';

/** The part of a slate that a search may change. */
export interface Region {
  /** Seats that may change hands, ascending. */
  readonly seats: Int32Array;
  /** By seat: 1 when it is one of them. */
  readonly isSeatMovable: Uint8Array;
  /** By official: 1 when their tours may change. */
  readonly isOfficialMovable: Uint8Array;
}

/** The whole slate but for its locked seats. */
export function wholeSlate(slate: CompiledSlate): Region {
  const isSeatMovable = Uint8Array.from(slate.seatLock, (lock) => (lock === SEAT_FREE ? 1 : 0));
  const seats = Int32Array.from(isSeatMovable.keys()).filter((seat) => isSeatMovable[seat] === 1);
  return { seats, isSeatMovable, isOfficialMovable: new Uint8Array(slate.officialCount).fill(1) };
}

/** What the moves draw from: the slate as it stands, chance, and lists of likely choices. */
export class Neighbourhood {
  constructor(
    readonly state: SlateState,
    readonly random: SeededRandom,
    readonly region: Region,
    readonly candidates = new SeatCandidates(state.slate),
    readonly nearby = new NearbyGames(state.slate),
  ) {}

  /** Any movable seat; open ones, while there are any, are drawn more often. */
  drawSeat(): number {
    const { state, random, region } = this;
    if (state.openCount > 0 && random.unit() < OPEN_SEAT_SHARE) {
      const seat = state.openSeats[random.below(state.openCount)]!;
      if (region.isSeatMovable[seat] === 1) return seat;
    }
    return region.seats[random.below(region.seats.length)]!;
  }

  /** Someone who might take the seat: cheap for it, or at work nearby; `NOBODY` when the draw was idle. */
  drawOfficial(seat: number): number {
    const official =
      this.random.unit() < NEARBY_SHARE ? this.drawNeighbour(seat) : this.candidates.draw(seat, this.random);
    if (official === NOBODY || this.region.isOfficialMovable[official] === 0) return NOBODY;
    return official === this.state.holders[seat] ? NOBODY : official;
  }

  private drawNeighbour(seat: number): number {
    const games = this.nearby.of(seat >> 1);
    if (games.length === 0) return NOBODY;
    const u = this.random.unit();
    const game = games[Math.floor(games.length * u * u)]!;
    return this.state.holders[2 * game + this.random.below(2)]!;
  }

  isMovable(seat: number): boolean {
    return this.region.isSeatMovable[seat] === 1;
  }
}

const OPEN_SEAT_SHARE = 0.1;
const NEARBY_SHARE = 0.45;

/** A way to change a slate: fills the (empty) list with a proposal, or returns false when the draw was idle. */
export type Move = (around: Neighbourhood, changes: ChangeList) => boolean;
