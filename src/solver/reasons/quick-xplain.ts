/**
 * A smallest-by-inclusion part of `items` that still fails: drop any one of it and it no longer does. Null when
 * even all of them do not fail. `fails` must hold for every superset of a set that fails.
 *
 * Junker: QuickXplain, preferred explanations and relaxations for over-constrained problems, AAAI 2004; items
 * that come first are kept where there is a choice.
 */
export function quickXplain<T>(
  items: readonly T[],
  fails: (items: readonly T[]) => boolean,
): readonly T[] | null {
  if (!fails(items)) return null;
  if (fails([])) return [];
  return explain([], false, items);

  function explain(background: readonly T[], backgroundGrew: boolean, rest: readonly T[]): readonly T[] {
    if (backgroundGrew && fails(background)) return [];
    if (rest.length === 1) return rest;
    const half = rest.length >> 1;
    const first = rest.slice(0, half);
    const second = rest.slice(half);
    const ofSecond = explain([...background, ...first], first.length > 0, second);
    const ofFirst = explain([...background, ...ofSecond], ofSecond.length > 0, first);
    return [...ofFirst, ...ofSecond];
  }
}
