import { line, unknownName, wholeNumber } from '../import-cells';
import { defineImportKind, optional, required, type RowContext } from '../import-kind';

const homePrefix = 'home:';

/** Measured ways between venues and homes, which go before every estimate. */
export const travelLegsImport = defineImportKind({
  name: 'travel-legs',
  noun: 'travel leg',
  after: ['venues', 'officials'],
  columns: {
    from: required(line(60), 'code of a venue, or `home:` and the number of an official'),
    to: required(line(60), 'likewise'),
    minutes: required(wholeNumber(0, 1440), 'whole minutes by car'),
    metres: required(wholeNumber(0, 2_000_000), 'whole metres by road'),
    measuredBy: optional(line(80), '', 'who or what measured it'),
  },
  keyOf: ({ from, to }) => `${from} > ${to}`,
  complete: (merged, context) => {
    checkEnd('from', merged.from, context);
    checkEnd('to', merged.to, context);
    if (merged.from === merged.to)
      context.fault('to', 'The leg ends where it begins.', 'remove the line; no way is no distance');
    return merged;
  },
  withdraw: () => null,
});

/** Kind and key of one end of a leg. */
export function legEnd(text: string): { kind: 'officials' | 'venues'; key: string } {
  return text.startsWith(homePrefix)
    ? { kind: 'officials', key: text.slice(homePrefix.length).trim() }
    : { kind: 'venues', key: text };
}

export function homeEnd(number: string): string {
  return `${homePrefix}${number}`;
}

function checkEnd(column: 'from' | 'to', text: string, context: RowContext): void {
  const { kind, key } = legEnd(text);
  const noun = kind === 'venues' ? 'venue' : 'official';
  if (!context.state.mayHave(kind, key)) {
    const { message, remedy } = unknownName(context.state, { kind, noun, text: key });
    const isOfficial = kind === 'venues' && context.state.get('officials', key) !== undefined;
    context.fault(column, message, isOfficial ? `did you mean "${homeEnd(key)}"?` : remedy);
    return;
  }
  const place = context.state.get(kind, key);
  if (place !== undefined && place['lat'] === null)
    context.fault(column, `The ${noun} "${key}" has no position.`, `add lat and lon to the list of ${kind}`);
}
