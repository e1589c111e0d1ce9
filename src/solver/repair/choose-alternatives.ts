import { compareRepairs, type FoundRepair } from './repair-pool';

export const ALTERNATIVES_MAX = 10;
/** Of each kind at least so many are shown where they exist: the first choice may be out of reach. */
const OF_EACH_KIND_MIN = 2;

/**
 * Up to ten repairs, best first. A way of another kind may be cheaper or easier to arrange, so that the best
 * of every kind are among them; the rest are filled up in order.
 */
export function chooseAlternatives(repairs: readonly FoundRepair[]): readonly FoundRepair[] {
  const ranked = [...repairs].sort(compareRepairs);
  const chosen = new Set<FoundRepair>();
  const leastOpened = ranked[0]?.opened ?? 0;
  for (const kind of ['standIn', 'crewSwap', 'chain'] as const) {
    const ofKind = ranked.filter((repair) => repair.kind === kind && repair.opened === leastOpened);
    for (const repair of ofKind.slice(0, OF_EACH_KIND_MIN)) chosen.add(repair);
  }
  const lastResort =
    ranked.find(({ opened }) => opened > leastOpened) ?? ranked.find(({ opened }) => opened > 0);
  if (lastResort !== undefined) chosen.add(lastResort);
  for (const repair of ranked) {
    if (chosen.size >= ALTERNATIVES_MAX) break;
    if (repair.opened === leastOpened) chosen.add(repair);
  }
  return [...chosen].sort(compareRepairs);
}
