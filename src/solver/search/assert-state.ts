import { NOBODY, SEAT_KEPT_OPEN } from '../compile/facts';
import { priceSlate } from '../costs/price-slate';
import { COST_TERM_RULES } from '../costs/registry';
import { judgeSlate } from '../rules/judge-slate';
import { gamesByOfficial, toursOf } from '../tours';
import { type SlateState } from './slate-state';

const TOLERANCE = 1e-6;

/**
 * Assertion mode: recomputes a search state from scratch by the rules and cost terms and throws where they
 * differ, naming the term. Far too slow for anything but tests; hang it on `AnnealOptions.afterMove`.
 */
export function assertConsistent(state: SlateState): void {
  const broken = judgeSlate(state.slate, state.holders);
  if (broken[0] !== undefined) {
    throw new Error(
      `the search made an illegal slate: ${broken.map((v) => `${v.rule} ${v.message}`).join('; ')}`,
    );
  }
  assertOpenSeats(state);
  assertCrews(state);
  assertTours(state);
  const total = priceSlate(state.slate, state.holders).total;
  differ('total', 'the slate', state.cost, total);
}

function assertOpenSeats(state: SlateState): void {
  const listed = new Set(state.openSeats.subarray(0, state.openCount));
  state.holders.forEach((holder, seat) => {
    const isOpen = holder === NOBODY && state.slate.seatLock[seat] !== SEAT_KEPT_OPEN;
    if (isOpen !== listed.has(seat))
      throw new Error(`open: seat ${seat} is ${isOpen ? 'not ' : ''}listed as open`);
  });
  if (listed.size !== state.openCount) throw new Error('open: a seat is listed twice');
}

function assertCrews(state: SlateState): void {
  const { slate, holders } = state;
  for (let game = 0; game < slate.gameCount; game++) {
    const terms = COST_TERM_RULES.filter((term) => term.ofCrew !== undefined).map(
      (term) => [term.id, term.ofCrew!(slate, game, holders[2 * game]!, holders[2 * game + 1]!)] as const,
    );
    const total = terms.reduce((sum, [, amount]) => sum + amount, 0);
    const shown = terms.map(([id, amount]) => `${id} ${amount}`).join(', ');
    differ(shown, `game ${slate.gameIds[game]}`, state.crewCost[game]!, total);
  }
}

function assertTours(state: SlateState): void {
  const { slate, tours } = state;
  const { start, games } = gamesByOfficial(slate, state.holders);
  const travel = COST_TERM_RULES.find((term) => term.id === 'travel')!;
  for (let official = 0; official < slate.officialCount; official++) {
    const own = games.subarray(start[official], start[official + 1]);
    const name = `official ${slate.officialIds[official]}`;
    differ('balance', name, state.gamesHeld[official]!, own.length);
    const costByDay = new Float64Array(slate.dayCount);
    if (own.length > 0) {
      for (const tour of toursOf(slate, own)) {
        costByDay[slate.gameDay[tour[0]!]!] = travel.ofTour!(slate, official, tour, tour.length);
      }
    }
    costByDay.forEach((cost, day) =>
      differ(
        'travel',
        `${name} on ${slate.dayNames[day]}`,
        tours.cost[official * slate.dayCount + day]!,
        cost,
      ),
    );
  }
}

function differ(term: string, where: string, searched: number, recomputed: number): void {
  if (Math.abs(searched - recomputed) <= TOLERANCE * Math.max(1, Math.abs(recomputed))) return;
  throw new Error(`${term}: the search has ${searched} for ${where}, from scratch it is ${recomputed}`);
}
