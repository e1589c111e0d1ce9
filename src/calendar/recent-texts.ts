/** A rendered feed and what it was rendered from. */
export interface RenderedFeed {
  readonly body: string;
  /** SHA-256 of `body` in quotes: a strong entity tag. */
  readonly entityTag: string;
  /** Names the state of the database that it shows. */
  readonly version: string;
  /** Milliseconds since 1970. */
  readonly renderedAt: number;
}

/** The feeds rendered last, each kept until it is the one asked for longest ago. */
export class RecentTexts {
  private readonly byKey = new Map<string, RenderedFeed>();

  /**
   * @param options.max texts kept; a feed of 30 games takes about 40 kB
   * @param options.millisecondsMax age at which a text is made again although its version is unchanged
   */
  constructor(private readonly options: { readonly max: number; readonly millisecondsMax: number }) {}

  find(key: string, version: string, now: Date): RenderedFeed | null {
    const found = this.byKey.get(key);
    if (found === undefined) return null;
    const age = now.getTime() - found.renderedAt;
    if (found.version !== version || age < 0 || age > this.options.millisecondsMax) return null;
    // A map keeps the order of insertion: put it at the end again.
    this.byKey.delete(key);
    this.byKey.set(key, found);
    return found;
  }

  keep(key: string, text: RenderedFeed): void {
    this.byKey.delete(key);
    this.byKey.set(key, text);
    const [oldest] = this.byKey.keys();
    if (this.byKey.size > this.options.max && oldest !== undefined) this.byKey.delete(oldest);
  }
}
