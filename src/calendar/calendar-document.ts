/** A calendar as a plain value, before it becomes bytes. Texts are as people wrote them; the renderer cleans them. */
export interface CalendarDocument {
  readonly name: string;
  /** How often a subscriber should look again, seconds; a suggestion that many calendar services ignore. */
  readonly refreshSeconds: number;
  readonly events: readonly CalendarEvent[];
}

/** One event; every instant is exact, zones appear only in its text. */
export interface CalendarEvent extends EventState {
  /** RFC 5545 §3.8.4.7: never changes, whatever happens to the event. */
  readonly uid: string;
  /** RFC 5545 §3.8.7.4: never falls. */
  readonly sequence: number;
  readonly createdAt: Date;
  /** Becomes DTSTAMP and LAST-MODIFIED (equal in a calendar without METHOD, RFC 5545 §3.8.7.2). */
  readonly revisedAt: Date;
  readonly startsAt: Date;
  /** After `startsAt`. */
  readonly endsAt: Date;
  readonly summary: string;
  readonly description: string;
  readonly place: CalendarPlace;
  /** Absolute http or https address. */
  readonly url: string | null;
}

export interface CalendarPlace {
  readonly name: string;
  readonly address: string;
  /** WGS 84 degrees. */
  readonly position: { readonly latitude: number; readonly longitude: number } | null;
}

/** What a calendar program shows of an event's standing, in the three dialects that programs read. */
export interface EventState {
  /** RFC 5545 §3.8.1.11. */
  readonly status: 'TENTATIVE' | 'CONFIRMED' | 'CANCELLED';
  /** RFC 5545 §3.8.2.7. */
  readonly transparency: 'OPAQUE' | 'TRANSPARENT';
  /** X-MICROSOFT-CDO-BUSYSTATUS, which Outlook prefers to TRANSP ([MS-OXCICAL] 2.1.3.1.1.20.31). */
  readonly busyStatus: 'TENTATIVE' | 'BUSY' | 'FREE';
}
