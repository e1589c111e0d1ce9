import {
  COST_TERMS,
  type CostBreakdown,
  type OpenSeatReason,
  type ReoptimisedSeat,
  type Remedy,
  type RemedyChange,
  type SeatCandidate,
  type SeatExplanation,
  type SeatMove,
  type SeatPlace,
  type Violation,
} from '../solver';
import { textTable } from './text-table';

/** Everything about one seat for a terminal. */
export function seatText({ place, lock, holder, candidates }: SeatExplanation): string {
  const lines = [
    holder === null ? `${seatName(place)}: open` : `${seatName(place)}: held by ${holder.official}`,
  ];
  if (lock.kind === 'kept-open') lines.push('The seat is kept open on purpose.');
  if (lock.kind === 'locked') lines.push(`The seat is locked to ${lock.official}.`);
  if (holder !== null) {
    for (const reason of holder.reasons) lines.push(`  breaks ${reasonText(reason, place, holder.official)}`);
    lines.push(`  leaving it open would change the cost by ${changeText(holder.leaving)}`);
  }
  const allowed = candidates.filter(({ kind }) => kind === 'allowed');
  const exchanging = candidates.filter(({ kind, exchange }) => kind === 'forbidden' && exchange !== null);
  const others = candidates.filter(({ kind, exchange }) => kind === 'forbidden' && exchange === null);
  for (const [title, group] of [
    ['May take it', allowed],
    ['Only by giving up a seat of their own', exchanging],
    ['May not', others],
  ] as const) {
    if (group.length > 0)
      lines.push('', `${title} (${group.length}):`, ...group.flatMap((c) => candidateLines(c, place)));
  }
  return lines.join('\n');
}

export function candidateLines(candidate: SeatCandidate, place: SeatPlace): readonly string[] {
  const { official, exchange } = candidate;
  const lines =
    candidate.kind === 'allowed'
      ? [`  ${official}  ${changeText(candidate.change)}`]
      : candidate.reasons.map(
          (reason, index) =>
            `  ${index === 0 ? official : ' '.repeat(official.length)}  ${reasonText(reason, place, official)}`,
        );
  if (exchange !== null) {
    const given = exchange.to === null ? 'leaving it open' : `which ${exchange.to} takes`;
    lines.push(`      giving up ${seatName(exchange.gives)}, ${given}: ${changeText(exchange.change)}`);
  }
  return lines;
}

/** Why a seat is open, in sentences. */
export function openSeatText(reason: OpenSeatReason, timeZone: string): string {
  const tally = reason.tally.map(
    ({ rule, officials, first, only }) =>
      `  ${rule}: ${officials} fail it, ${first} first of all, ${only} nothing else`,
  );
  const notEligible = tally.length === 0 ? [] : ['Who may not take it in any slate, by rule:', ...tally];
  switch (reason.kind) {
    case 'kept-open':
      return 'Open because it is kept open on purpose.';
    case 'can-be-filled':
      return `It need not be open: ${reason.officials.join(', ')} may take it as the slate stands.`;
    case 'nobody-eligible':
      return ['Open because nobody is eligible.', ...notEligible].join('\n');
    case 'held-back':
      return ['Open because everybody eligible is held back:', ...heldBackLines(reason), ...notEligible].join(
        '\n',
      );
    case 'needed-elsewhere': {
      const { seats, officials, room, minLevel, from, to } = reason.shortage;
      const people = someOf(officials.map(({ official, roomFor }) => `${official} (${roomFor})`));
      return [
        `Open because eligible people are needed elsewhere: these ${seats.length} seats from ${when(from, timeZone)} to ${when(to, timeZone)}`,
        `ask for level ${minLevel} or more, and the ${officials.length} people who may take any of them can work ${room} in all.`,
        `  Seats: ${someOf(seats.map(seatName))}`,
        `  People (seats each can work): ${people}`,
        'What holds back those who may take this one:',
        ...heldBackLines(reason),
        ...notEligible,
      ].join('\n');
    }
  }
}

/** More than fill a few lines of a terminal are counted only. */
const LISTED_MAX = 40;

function someOf(names: readonly string[]): string {
  const listed = names.slice(0, LISTED_MAX).join(', ');
  return names.length <= LISTED_MAX ? listed : `${listed} and ${names.length - LISTED_MAX} more`;
}

function heldBackLines(
  reason: Extract<OpenSeatReason, { readonly kind: 'held-back' | 'needed-elsewhere' }>,
): string[] {
  return reason.heldBack.map(({ official, reasons, inTheWay }) => {
    const why = reasons.map((own) => reasonText(own, reason.place, official)).join('; ');
    return `  ${official}: ${why}${inTheWay.length > 0 ? ` (in the way: ${inTheWay.map(seatName).join(', ')})` : ''}`;
  });
}

/** Remedies in order, the smallest first. */
export function remediesText(remedies: readonly Remedy[], timeZone: string): string {
  if (remedies.length === 0) return 'No single change that was tried fills the seat.';
  const rows = remedies.map(({ change, needsApproval, filledBy, openSeats, costChange, moves }) => [
    `${remedyText(change, timeZone)}${needsApproval ? ' (needs approval)' : ''}`,
    filledBy,
    String(openSeats),
    signed(costChange.total),
    String(moves.length),
  ]);
  return textTable(
    ['What would fill it, each solved again', 'Filled by', 'Open seats', 'Cost', 'Seats changed'],
    rows,
  );
}

export function remedyText(change: RemedyChange, timeZone: string): string {
  switch (change.kind) {
    case 'search':
      return 'nothing but to search on';
    case 'availability':
      return `${change.official} is available ${change.moreMinutes} minutes longer (${when(change.window.from, timeZone)} to ${when(change.window.to, timeZone)})`;
    case 'load':
      return `${change.official} works one more game (${change.maxGamesPerDay} a day, ${change.maxGames} in the slate)`;
    case 'reach':
      return `${change.official} accepts ${change.moreMinutes} more minutes from home (${change.maxHomeMinutes})`;
    case 'tip-off':
      return `game ${change.game} tips off ${Math.abs(change.byMinutes)} minutes ${change.byMinutes < 0 ? 'earlier' : 'later'} (${when(change.tipOff, timeZone)})`;
    case 'wish':
      return `${change.official}'s wish to keep game ${change.game}'s time free is set aside`;
    case 'level':
      return `${change.official} takes ${seatName(change.place)} with level ${change.level} instead of ${change.minLevel}`;
  }
}

/** What putting one official into the seat and solving again gives. */
export function reoptimisedText(result: ReoptimisedSeat, place: SeatPlace, official: string): string {
  if (result.kind === 'forbidden') {
    return [
      `${official} cannot be put there:`,
      ...result.reasons.map((reason) => `  ${reasonText(reason, place, official)}`),
    ].join('\n');
  }
  return [
    `With ${official} there and everything else solved again: ${changeText(result.change)}`,
    `${result.openSeats} open ${result.openSeats === 1 ? 'seat' : 'seats'}; these change hands:`,
    ...result.moves.map((move) => `  ${moveText(move)}`),
  ].join('\n');
}

export function moveText({ from, to, ...place }: SeatMove): string {
  return `${seatName(place)}: ${from ?? 'open'} → ${to ?? 'open'}`;
}

export function seatName({ game, seat }: SeatPlace): string {
  return `${game} ${seat}`;
}

/** The rule and its words, with the game and the people where they are others than those asked about. */
export function reasonText(
  { rule, game, officials, message }: Violation,
  place: SeatPlace,
  official: string,
): string {
  const others = officials.length === 1 && officials[0] !== official ? `${officials[0]} ` : '';
  const elsewhere = game === null || game === place.game ? '' : `at game ${game}: `;
  return `${rule} ${elsewhere}${others}${message}`;
}

/** `+12.5 (travel +10.0, balance +2.5)`; terms that do not change are left out. */
export function changeText(change: CostBreakdown): string {
  const terms = COST_TERMS.filter((term) => Math.abs(change[term]) >= 0.05).map(
    (term) => `${term} ${signed(change[term])}`,
  );
  return `${signed(change.total)}${terms.length > 0 ? ` (${terms.join(', ')})` : ''}`;
}

export function signed(amount: number): string {
  return `${amount < 0 ? '−' : '+'}${Math.abs(amount).toFixed(1)}`;
}

/** `Sat 7 Mar 14:05` in the slate's zone. */
function when(instant: string, timeZone: string): string {
  const part = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat('en-GB', { timeZone, ...options }).format(Date.parse(instant));
  const day = part({ weekday: 'short', day: 'numeric', month: 'short' }).replace(',', '');
  return `${day} ${part({ hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })}`;
}
