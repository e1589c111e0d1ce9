import { type Violation } from '../answer';
import { judgeSlate } from '../rules/judge-slate';
import { idOfHolder, placeOfSeat, type PresentSlate, type SeatPlace } from '../reasons/present-slate';
import { planReserves, type ReservePlan } from './reserves';
import { solveWithdrawals, type Withdrawal, type WithdrawalOptions } from './solve-withdrawals';
import { listStandIns } from './stand-ins';

/** Who could take one seat if its holder could not. */
export interface SeatFragility {
  readonly place: SeatPlace;
  /** Null when the seat is open. */
  readonly holder: string | null;
  /** Everything else as it is. */
  readonly alone: readonly string[];
  /** Others who could, with one more change: somebody (`to`) takes the seat they give up. One way for each. */
  readonly withOneMore: readonly {
    readonly official: string;
    readonly gives: SeatPlace;
    readonly to: string;
  }[];
}

export type SeatStudy =
  | {
      readonly kind: 'studied';
      /** Every seat but those kept open, in the order of the games. */
      readonly seats: readonly SeatFragility[];
      readonly reserves: ReservePlan;
    }
  /** Stand-ins and withdrawals are asked about legal slates only. */
  | { readonly kind: 'illegal'; readonly violations: readonly Violation[] };

export type Fragility =
  | (Extract<SeatStudy, { readonly kind: 'studied' }> & { readonly withdrawals: readonly Withdrawal[] })
  | Extract<SeatStudy, { readonly kind: 'illegal' }>;

/** Stand-ins and reserves; quick, without any search. */
export function studySeats(present: PresentSlate): SeatStudy {
  const { slate, holders } = present;
  const violations = judgeSlate(slate, holders);
  if (violations.length > 0) return { kind: 'illegal', violations };
  const standIns = listStandIns(slate, holders);
  const seats = standIns.map(({ seat, alone, withOneMore }) => ({
    place: placeOfSeat(slate, seat),
    holder: idOfHolder(slate, holders[seat]!),
    alone: alone.map((official) => slate.officialIds[official]!),
    withOneMore: withOneMore.map(({ official, gives, to }) => ({
      official: slate.officialIds[official]!,
      gives: placeOfSeat(slate, gives),
      to: slate.officialIds[to]!,
    })),
  }));
  return { kind: 'studied', seats, reserves: planReserves(present, standIns) };
}

/** What a slate hangs on: seats, officials, reserves. Takes the time that the options allow. */
export async function studyFragility(present: PresentSlate, options: WithdrawalOptions): Promise<Fragility> {
  const study = studySeats(present);
  if (study.kind === 'illegal') return study;
  return { ...study, withdrawals: await solveWithdrawals(present, options) };
}
