import { type SlateProblem } from './problem';
import { gatherFacts } from './compile/gather-facts';
import { compileFit } from './compile/compile-fit';
import { compileFollow } from './compile/compile-follow';
import { type CompiledSlate } from './compile/compiled-slate';

export { type CompiledSlate } from './compile/compiled-slate';
export * from './compile/fit-bits';

/** Turns a problem that `readProblem` accepted into flat arrays. */
export function compileSlate(problem: SlateProblem): CompiledSlate {
  const facts = gatherFacts(problem);
  return { ...facts, ...compileFit(facts), ...compileFollow(facts) };
}

/** Whether game `later` may directly follow game `earlier` of the same day in a tour (H3). */
export function mayFollow(slate: CompiledSlate, earlier: number, later: number): boolean {
  const day = slate.gameDay[earlier]!;
  const first = slate.dayStart[day]!;
  const column = later - first;
  const word = slate.followStart[day]! + (earlier - first) * slate.followWords[day]! + (column >> 5);
  return ((slate.follow[word]! >>> (column & 31)) & 1) === 1;
}
