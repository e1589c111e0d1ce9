import {
  COST_TERMS,
  type CostBreakdown,
  type RepairAlternative,
  type RepairReport,
  type SeatOfGame,
} from '../solver';

const KIND_WORDS: Readonly<Record<RepairAlternative['kind'], string>> = {
  standIn: 'stand-in',
  crewSwap: 'swap within the crew',
  chain: 'chain',
  openSeat: 'seat left open',
  anew: 'the whole slate searched anew',
};

/** A repair report for a terminal: what is broken, then each way to mend it as a list of calls. */
export function repairText(report: RepairReport): string {
  const { alternatives, anew } = report;
  const lines = [...brokenLines(report), ''];
  if (alternatives.length > 0) lines.push(fewestLine(report), '');
  alternatives.forEach((alternative, index) =>
    lines.push(`${index + 1}. ${heading(alternative)}`, ...calls(alternative)),
  );
  if (anew !== null) {
    const isCheaper = alternatives.every(({ cost }) => anew.cost.total < cost.total - 1e-6);
    const note = isCheaper ? '' : ': nothing cheaper was found';
    lines.push('', `For comparison, ${heading(anew)}${note}`, ...(isCheaper ? calls(anew) : []));
  }
  return `${lines.join('\n').trimEnd()}\n`;
}

function brokenLines({ brokenSeats, clashes, releasedLocks }: RepairReport): string[] {
  if (brokenSeats.length + clashes.length === 0)
    return ['Nothing is broken: the published slate is still legal.'];
  return [
    'Broken:',
    ...brokenSeats.map((seat) =>
      seat.official === null
        ? `  ${seatText(seat)}: new, nobody has it yet`
        : `  ${seatText(seat)}: ${seat.official} ${seat.reasons.join('; ')}`,
    ),
    ...clashes.map(({ rule, game, officials, message }) =>
      [`  ${rule}`, game === null ? '' : ` ${game}`, ` (${officials.join(', ')}): ${message}`].join(''),
    ),
    ...releasedLocks.map((seat) => `  the lock of ${seatText(seat)} is let go`),
  ];
}

function fewestLine({ fewest }: RepairReport): string {
  if (fewest === null) return 'What was found in the time:';
  const open = fewest.openedSeats === 0 ? '' : `, ${count(fewest.openedSeats, 'seat', 'seats')} left open`;
  const proof = fewest.isProven
    ? 'no way that leaves as few seats open disturbs fewer (all were tried)'
    : 'fewer may be possible (not all were tried)';
  return `Fewest people: ${fewest.people}${open}; ${proof}.`;
}

function heading({ kind, people, costChange }: RepairAlternative): string {
  return `${KIND_WORDS[kind]}: ${count(people.length, 'person', 'people')}, cost ${changeText(costChange)}`;
}

/** One line for each person, in the order in which the chains reach them. */
function calls({ calls, openSeats }: RepairAlternative): string[] {
  const wordsByOfficial = new Map<string, string[]>();
  for (const { official, leaves, takes } of calls) {
    const words = wordsByOfficial.get(official) ?? [];
    if (takes !== null) words.push(`takes ${seatText(takes)}`);
    if (leaves !== null) words.push(`leaves ${seatText(leaves)}`);
    wordsByOfficial.set(official, words);
  }
  return [
    ...[...wordsByOfficial].map(([official, words]) => `     call ${official}: ${words.join(', ')}`),
    ...openSeats.map((seat) => `     ${seatText(seat)} stays open`),
  ];
}

function changeText(change: CostBreakdown): string {
  const terms = COST_TERMS.filter((term) => Math.abs(change[term]) >= 0.05);
  const parts = terms.map((term) => `${term} ${signed(change[term])}`);
  return `${signed(change.total)}${parts.length === 0 ? '' : ` (${parts.join(', ')})`}`;
}

function signed(amount: number): string {
  return `${amount < 0 ? '−' : '+'}${Math.abs(amount).toFixed(1)}`;
}

function seatText({ game, seat }: SeatOfGame): string {
  return `${game} ${seat}`;
}

function count(amount: number, one: string, many: string): string {
  return `${amount} ${amount === 1 ? one : many}`;
}
