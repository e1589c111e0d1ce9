/** The solver's only door: everything other rooms may use. */
export * from './problem';
export * from './answer';
export { readProblem, type ReadProblemResult } from './read-problem';
export { describeFault, type Fault } from './read/faults';
export { compileSlate, type CompiledSlate } from './compile';
export { type SlateFacts, NOBODY, SEAT_FREE, SEAT_KEPT_OPEN } from './compile/facts';
export { type Holders } from './tours';
export { HARD_RULES } from './rules/registry';
export { type HardRule, type Load } from './rules/hard-rule';
export { judgeLocks, judgeSlate } from './rules/judge-slate';
export { COST_TERM_RULES } from './costs/registry';
export { type CostTermRule } from './costs/cost-term';
export { priceSlate } from './costs/price-slate';
export { solveSlate } from './solve/solve-slate';
export { defaultSeconds, type SolveOptions, type SolveProgress } from './solve/solve-options';
export { checkAnswer, type CheckReport } from './checker/check-answer';
export { presentSlate, seatIndex, type PresentSlate, type SeatPlace } from './reasons/present-slate';
export {
  explainSeat,
  type SeatCandidate,
  type SeatExchange,
  type SeatExplanation,
} from './reasons/explain-seat';
export {
  explainOpenSeat,
  type HeldBack,
  type OpenSeatReason,
  type ShortageReport,
} from './reasons/explain-open-seat';
export { reoptimiseSeat, type ReoptimisedSeat, type SeatMove } from './reasons/reoptimise-seat';
export { findRemedies, type RemedyOptions } from './reasons/find-remedies';
export { applyRemedy, type Remedy, type RemedyChange } from './reasons/remedy';
export {
  studyFragility,
  studySeats,
  type Fragility,
  type SeatFragility,
  type SeatStudy,
} from './fragility/study-fragility';
export { type Withdrawal, type WithdrawalOptions } from './fragility/solve-withdrawals';
export { type Reserve, type ReservePlan } from './fragility/reserves';
export { applyEvents } from './repair/apply-events';
export { type ChangedLimits, type SlateEvent, type SlateEvents } from './repair/events';
export { readEvents, type ReadEventsResult } from './repair/read-events';
export { repairSlate, type RepairOptions } from './repair/repair-slate';
export {
  type BrokenSeat,
  type RepairAlternative,
  type RepairCall,
  type RepairOutcome,
  type RepairReport,
  type SeatOfGame,
} from './repair/repair-report';
export {
  tradeOffs,
  type TradeOffOptions,
  type TradeOffProposal,
  type TradeOffs,
} from './tradeoffs/trade-offs';
export { type Emphasis } from './tradeoffs/emphasis';
