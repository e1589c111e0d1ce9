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
