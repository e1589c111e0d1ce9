import { type Assignment } from '../answer';
import { compileSlate, type CompiledSlate } from '../compile';
import { priceSlate } from '../costs/price-slate';
import { type SlateProblem } from '../problem';
import { judgeLocks } from '../rules/judge-slate';
import { type Holders } from '../tours';
import { applyEvents } from './apply-events';
import { repairRoot } from './broken-seats';
import { chooseAlternatives } from './choose-alternatives';
import { clashesOf, describeBroken } from './describe-broken';
import { type SlateEvent } from './events';
import { RepairFinder } from './find-repairs';
import { releaseLocks } from './release-locks';
import { type FoundRepair } from './repair-pool';
import { type RepairAlternative, type RepairOutcome } from './repair-report';
import { searchAnew } from './search-anew';
import { Verifier } from './verify';
import { nameSeat, writeAlternative, type RepairSetting } from './write-alternative';

export interface RepairOptions {
  /** Officials tried for seats, all in all. Default: enough for a proof on 250 games. */
  readonly steps?: number;
  /** Steps of the search for the whole slate anew; 0 for none. Default: by size. */
  readonly anewSteps?: number;
  /** Any whole number; default 1. It matters for the search anew alone. */
  readonly seed?: number;
  /** The caller's clock in seconds, with the time after which only what was found so far is reported. */
  readonly clock?: { readonly nowSeconds: () => number; readonly seconds: number };
  /** Ends the search within a fraction of a second, with what was found so far. */
  readonly signal?: AbortSignal;
}

const STEPS_DEFAULT = 600_000;

/**
 * Answers what happened to a published slate: which seats are broken, and up to ten legal ways to mend it, with
 * the fewest people disturbed first. Without a clock the answer depends on its input alone.
 *
 * `published` lists the games of `problem`; `events` are as `readEvents` accepted them.
 */
export async function repairSlate(
  problem: SlateProblem,
  published: readonly Assignment[],
  events: readonly SlateEvent[],
  options: RepairOptions = {},
): Promise<RepairOutcome> {
  const isStopped = stopOf(options);
  const changed = applyEvents(problem, published, events);
  const { problem: freed, slate, released } = releaseLocks(changed, compileSlate(changed));
  const lockViolations = judgeLocks(slate);
  if (lockViolations.length > 0) return { ok: false, lockViolations };

  const added = new Set(events.flatMap((event) => (event.kind === 'gameAdded' ? [event.game.id] : [])));
  const addedGames = new Set([...slate.gameIds.keys()].filter((game) => added.has(slate.gameIds[game]!)));
  const root = repairRoot({
    slate,
    published: slate.seatPublished,
    addedGames,
    withdrawn: withdrawnOf(slate, events),
  });
  const finder = new RepairFinder(root, {
    stepsMax: options.steps ?? STEPS_DEFAULT,
    isStopped,
    pause: nextTurn,
  });
  const isBroken = root.brokenSeats.length + root.games.length + root.officials.length > 0;
  const { repairs, fewest, steps } = isBroken ? await finder.find() : { repairs: [], fewest: null, steps: 0 };

  const publishedCost = priceSlate(slate, slate.seatPublished);
  const setting: RepairSetting = {
    problem: freed,
    slate,
    published: slate.seatPublished,
    publishedCost,
    brokenSeats: new Set(root.brokenSeats),
    excusedSeats: new Set(root.excusedSeats),
    addedGames,
  };
  const verifier = new Verifier(freed);
  const write = (kind: RepairAlternative['kind'], holders: Holders): RepairAlternative => {
    const alternative = writeAlternative(setting, kind, holders);
    verifier.verify(alternative.assignments, alternative.cost);
    return alternative;
  };
  const alternatives = chooseAlternatives(repairs).map((repair) =>
    write(repair.kind, holdersOf(slate, repair)),
  );
  const anew = await findAnew(slate, repairs, { ...options, isStopped });
  return {
    ok: true,
    problem: freed,
    brokenSeats: root.brokenSeats.map((seat) => describeBroken(slate, seat)),
    clashes: clashesOf(slate, root),
    releasedLocks: released.map((seat) => nameSeat(slate, seat)),
    alternatives,
    anew: anew === null ? null : write('anew', anew),
    fewest,
    publishedCost,
    steps,
  };
}

function stopOf({ clock, signal }: RepairOptions): () => boolean {
  const endSeconds = clock === undefined ? Infinity : clock.nowSeconds() + clock.seconds;
  return () => signal?.aborted === true || (clock !== undefined && clock.nowSeconds() >= endSeconds);
}

/** Lets the caller's other work run. */
function nextTurn(): Promise<void> {
  return new Promise((resume) => setImmediate(resume));
}

function withdrawnOf(slate: CompiledSlate, events: readonly SlateEvent[]): ReadonlySet<number> {
  const ids = new Set(events.flatMap((event) => (event.kind === 'officialOut' ? [event.official] : [])));
  return new Set([...slate.officialIds.keys()].filter((official) => ids.has(slate.officialIds[official]!)));
}

function holdersOf(slate: CompiledSlate, { changes }: FoundRepair): Holders {
  const holders = slate.seatPublished.slice();
  for (const { seat, holder } of changes) holders[seat] = holder;
  return holders;
}

/** Steps for a slate of this size: a fraction of a second. */
function anewStepsFor(slate: CompiledSlate): number {
  return Math.min(400_000, 100_000 + 500 * slate.gameCount);
}

/** The slate searched anew from the cheapest repair; null when there is none or no search was asked for. */
async function findAnew(
  slate: CompiledSlate,
  repairs: readonly FoundRepair[],
  options: RepairOptions & { readonly isStopped: () => boolean },
): Promise<Holders | null> {
  const cheapest = repairs.reduce<FoundRepair | null>(
    (best, repair) => (best === null || repair.cost < best.cost ? repair : best),
    null,
  );
  const steps = options.anewSteps ?? anewStepsFor(slate);
  if (cheapest === null || steps === 0) return null;
  const { isStopped, seed = 1 } = options;
  return searchAnew(slate, holdersOf(slate, cheapest), { steps, seed, isStopped, pause: nextTurn });
}
