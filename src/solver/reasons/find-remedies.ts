import { compileSlate, type CompiledSlate } from '../compile';
import { NOBODY } from '../compile/facts';
import { priceSlate } from '../costs/price-slate';
import { type Holders } from '../tours';
import {
  assignmentsOf,
  idOfHolder,
  placeOfSeat,
  renumber,
  seatIndex,
  type PresentSlate,
} from './present-slate';
import { proposeRemedies, type Proposal, type TipOffRange } from './propose-remedies';
import { applyRemedy, type Remedy } from './remedy';
import { assertSound, costDifference, listMoves } from './reoptimise-seat';
import { countOpen, solveAgain, solvedSlate, type SolveAgainOptions, type SolvedSlate } from './solve-again';

export interface RemedyOptions extends SolveAgainOptions {
  /** Stop after so many remedies; default 6. */
  readonly remediesMax?: number;
  /** Solve at most so many changed problems; default 24. */
  readonly triesMax?: number;
  /** How far a tip-off may be moved; default an hour either way. */
  readonly tipOffRange?: TipOffRange;
}

/** Of each kind of change so many are tried at most, so that one kind does not crowd out the others. */
const TRIES_OF_KIND_MAX = 8;
const RANGE_DEFAULT: TipOffRange = { earlierMinutes: 60, laterMinutes: 60 };

/**
 * The smallest changes that fill an open seat and leave fewer seats open, each verified: the changed problem is
 * built, solved from the present slate, and judged by the independent checker. Ranked by what they ask of
 * people, those that need approval last. When the present problem needs no change but only more search, that is
 * the only remedy.
 */
export function findRemedies(present: PresentSlate, seat: number, options: RemedyOptions): readonly Remedy[] {
  const { remediesMax = 6, triesMax = 24, tipOffRange = RANGE_DEFAULT } = options;
  const asIs = tryRemedy(present, seat, { change: { kind: 'search' }, size: 0, direct: true }, options);
  if (asIs !== null) return [asIs];
  const found: Remedy[] = [];
  const helped = new Set<string>();
  const triesOfKind = new Map<string, number>();
  let tries = 0;
  for (const proposal of proposeRemedies(present, seat, tipOffRange)) {
    if (found.length >= remediesMax || tries >= triesMax || options.isOver?.() === true) break;
    const { change } = proposal;
    const triedBefore = triesOfKind.get(change.kind) ?? 0;
    // One change of a kind is enough to ask of one person: the smallest that helps.
    const whom = `${change.kind} ${'official' in change ? change.official : JSON.stringify(change)}`;
    if (triedBefore >= TRIES_OF_KIND_MAX || helped.has(whom)) continue;
    triesOfKind.set(change.kind, triedBefore + 1);
    tries++;
    const remedy = tryRemedy(present, seat, proposal, options);
    if (remedy === null) continue;
    helped.add(whom);
    found.push(remedy);
  }
  return found;
}

function tryRemedy(
  { problem, slate, holders }: PresentSlate,
  seat: number,
  { change }: Proposal,
  options: SolveAgainOptions,
): Remedy | null {
  const changed = applyRemedy(problem, change);
  const compiled = change.kind === 'search' ? slate : compileSlate(changed);
  // A moved tip-off can change the order of games, so seats are carried over by id.
  const start = change.kind === 'tip-off' ? renumber(slate, holders, compiled) : holders;
  const here = seatIndex(compiled, placeOfSeat(slate, seat))!;
  const before = countOpen(slate, holders);
  const solved = solveWithout(compiled, start, { seat: here, openBefore: before }, options);
  const present = priceSlate(slate, holders);
  // Where the weights make an open seat the better choice, filling it is no remedy.
  if (solved === null || solved.cost.total >= present.total) return null;
  assertSound(changed, compiled, solved);
  return {
    change,
    needsApproval: change.kind === 'level',
    filledBy: idOfHolder(compiled, solved.holders[here]!)!,
    openSeats: solved.openSeats,
    costChange: costDifference(solved.cost, present),
    moves: listMoves(compiled, { before: start, after: solved.holders }, here),
    assignments: assignmentsOf(compiled, solved.holders),
  };
}

/** A slate with the seat filled and fewer seats open than before; gently at first, then looking further. */
function solveWithout(
  slate: CompiledSlate,
  start: Holders,
  { seat, openBefore }: { readonly seat: number; readonly openBefore: number },
  options: SolveAgainOptions,
): SolvedSlate | null {
  // Among several open seats the search would as soon fill another one; this one is to count more while it runs.
  const gamePriority = slate.gamePriority.slice();
  gamePriority[seat >> 1]! *= PREFERENCE;
  const preferring: CompiledSlate = { ...slate, gamePriority };
  for (const gentle of [true, false]) {
    const solved = solveAgain(preferring, start, { ...options, gentle });
    if (solved === null) return null;
    if (solved.holders[seat] !== NOBODY && solved.openSeats < openBefore)
      return solvedSlate(slate, solved.holders);
  }
  return null;
}

const PREFERENCE = 1.5;
