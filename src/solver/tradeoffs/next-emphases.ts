import { type Emphasis } from './emphasis';
import { type Front, type FrontSlate } from './front';

/** Each concern once far ahead of the others: the corners of the front. */
const CORNERS: readonly Emphasis[] = [
  { driving: 4, development: 0.5, fairness: 0.5 },
  { driving: 0.5, development: 4, fairness: 0.5 },
  { driving: 0.5, development: 0.5, fairness: 4 },
];

/** What to search for next, at most `count`: the corners first, then what lies in the widest gaps of the front. */
export function nextEmphases(front: Front, done: number, count: number): readonly Emphasis[] {
  const corners = CORNERS.slice(done, done + count);
  const between = front.gaps().map(middleOf);
  return [...corners, ...between].slice(0, count);
}

/** Weights halfway between those of two slates, as ratios go. */
function middleOf([one, other]: readonly [FrontSlate, FrontSlate]): Emphasis {
  const middle = (concern: keyof Emphasis) => Math.sqrt(one.emphasis[concern] * other.emphasis[concern]);
  return { driving: middle('driving'), development: middle('development'), fairness: middle('fairness') };
}
