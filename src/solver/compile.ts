import { type SlateProblem } from './problem';
import { gatherFacts } from './compile/gather-facts';
import { compileFit } from './compile/compile-fit';
import { compileFollow } from './compile/compile-follow';
import { type CompiledSlate } from './compile/compiled-slate';

export { mayFollow } from './compile/compile-follow';
export { type CompiledSlate } from './compile/compiled-slate';
export * from './compile/fit-bits';

/** Turns a problem that `readProblem` accepted into flat arrays. */
export function compileSlate(problem: SlateProblem): CompiledSlate {
  const facts = gatherFacts(problem);
  return { ...facts, ...compileFit(facts), ...compileFollow(facts) };
}
