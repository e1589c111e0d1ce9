/** Where the present moment comes from; nothing else of ours asks the machine for it. */
export interface Clock {
  now(): Date;
}

/** Under this name a service asks for the clock: `@Inject(clockToken) clock: Clock`. */
export const clockToken = Symbol('clock');

export const systemClock: Clock = { now: () => new Date() };

/** A clock that stands still until it is moved; for tests and for demonstrations at a chosen moment. */
export class FixedClock implements Clock {
  private instant: number;

  /** @param instant ISO 8601 with an offset or `Z` */
  constructor(instant: string) {
    this.instant = parseInstant(instant);
  }

  now(): Date {
    return new Date(this.instant);
  }

  moveTo(instant: string): void {
    this.instant = parseInstant(instant);
  }

  advanceMinutes(minutes: number): void {
    this.instant += minutes * 60_000;
  }
}

function parseInstant(text: string): number {
  // Without an offset the meaning would depend on the zone of the machine.
  const value = /(Z|[+-]\d\d:\d\d)$/.test(text) ? Date.parse(text) : Number.NaN;
  if (Number.isNaN(value)) throw new Error(`"${text}" is not an instant such as 2026-03-01T18:00:00Z.`);
  return value;
}
