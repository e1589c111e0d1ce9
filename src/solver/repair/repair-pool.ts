import { NOBODY } from '../compile/facts';
import { type WorkingSlate } from './working-slate';

/** One seat of a repair and who holds it instead. */
export interface SeatChange {
  readonly seat: number;
  readonly holder: number;
}

/** What a repair consists of, seen from the telephone. */
export type RepairKind =
  /** Only people who take seats and give none away. */
  | 'standIn'
  /** Somebody changes to the other seat of the same game, and everybody else only takes seats. */
  | 'crewSwap'
  /** Somebody gives a seat away to take another. */
  | 'chain'
  /** A seat stays open. */
  | 'openSeat';

export interface FoundRepair {
  readonly kind: RepairKind;
  /** Ascending by seat. */
  readonly changes: readonly SeatChange[];
  readonly people: number;
  readonly opened: number;
  readonly cost: number;
}

/** Seats left open first, for that is the last resort, then people disturbed, then cost; equal ones by seats and holders. */
export function compareRepairs(a: FoundRepair, b: FoundRepair): number {
  return (
    a.opened - b.opened || a.people - b.people || a.cost - b.cost || compareChanges(a.changes, b.changes)
  );
}

function compareChanges(a: readonly SeatChange[], b: readonly SeatChange[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const difference = a[i]!.seat - b[i]!.seat || a[i]!.holder - b[i]!.holder;
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}

/** So many of one kind and number of people are remembered. */
const KEPT_PER_GROUP = 12;

/** Remembers the best repairs of each kind and number of people, each once. */
export class RepairPool {
  private readonly groups = new Map<string, FoundRepair[]>();

  /** The fewest people of any repair that leaves at most so many seats open; Infinity when there is none. */
  fewestPeople(openedMax: number): number {
    const fitting = this.all().filter(({ opened }) => opened <= openedMax);
    return fitting.reduce((fewest, { people }) => Math.min(fewest, people), Infinity);
  }

  all(): FoundRepair[] {
    return [...this.groups.values()].flat().sort(compareRepairs);
  }

  add(working: WorkingSlate): void {
    const seats = working.changed;
    const kind = kindOf(working, seats);
    const people = working.disturbed.length;
    const key = `${working.opened} ${people} ${kind}`;
    const group = this.groups.get(key) ?? [];
    const worst = group.length < KEPT_PER_GROUP ? Infinity : group.at(-1)!.cost;
    if (working.cost > worst) return;
    const changes = seats
      .map((seat) => ({ seat, holder: working.holders[seat]! }))
      .sort((a, b) => a.seat - b.seat);
    const found = { kind, changes, people, opened: working.opened, cost: working.cost };
    if (group.some((other) => compareChanges(other.changes, changes) === 0)) return;
    group.push(found);
    group.sort(compareRepairs);
    this.groups.set(key, group.slice(0, KEPT_PER_GROUP));
  }
}

function kindOf({ opened, published, holders }: WorkingSlate, seats: readonly number[]): RepairKind {
  if (opened > 0) return 'openSeat';
  let kind: RepairKind = 'standIn';
  for (const seat of seats) {
    const official = holders[seat]!;
    if (official === NOBODY) continue;
    const given = seats.filter((other) => published[other] === official);
    if (given.some((other) => other !== (seat ^ 1))) return 'chain';
    if (given.length > 0) kind = 'crewSwap';
  }
  return kind;
}
