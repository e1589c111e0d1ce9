import { randomInt } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { QueryFailedError, type DataSource, type EntityManager } from 'typeorm';

/** What a session may state about itself before the association is known; row-level security compares each. */
export interface SessionSettings {
  readonly associationId?: string;
  readonly accountId?: string;
  /** Address that somebody signs in with, in lower case. */
  readonly accountEmail?: string;
  /** SHA-256 of a sign-in link's token, hexadecimal. */
  readonly linkTokenHash?: string;
  /** SHA-256 of a session token, hexadecimal. */
  readonly sessionTokenHash?: string;
  /** SHA-256 of a calendar feed's token, hexadecimal. */
  readonly feedTokenHash?: string;
}

export interface TransactionOptions {
  /** The work may be run again from its start when it loses against another transaction; at most 4 times in all. */
  readonly repeatable?: boolean;
}

/** Work inside one transaction, which is always handed on as an argument and never found in the surroundings. */
export type Work<T> = (tx: EntityManager) => Promise<T>;

const settingNames: Record<keyof SessionSettings, string> = {
  associationId: 'crewloom.association_id',
  accountId: 'crewloom.account_id',
  accountEmail: 'crewloom.account_email',
  linkTokenHash: 'crewloom.link_hash',
  sessionTokenHash: 'crewloom.session_hash',
  feedTokenHash: 'crewloom.feed_hash',
};
const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const sha256 = /^[0-9a-f]{64}$/;
const formats: Record<keyof SessionSettings, RegExp> = {
  associationId: uuid,
  accountId: uuid,
  accountEmail: /^[^\sA-Z]+@[^\sA-Z]+$/,
  linkTokenHash: sha256,
  sessionTokenHash: sha256,
  feedTokenHash: sha256,
};
const attemptsMax = 4;

/**
 * The only way to the tables: each call opens one transaction that states whose rows it may see. The settings end with the
 * transaction, so a pooled connection never carries one association's view into the next request.
 */
export class Tenancy {
  constructor(private readonly dataSource: DataSource) {}

  /** Reads and writes one association's rows. */
  run<T>(associationId: string, work: Work<T>, options?: TransactionOptions): Promise<T> {
    return this.transaction({ associationId }, work, { writes: true, ...options });
  }

  /** Reads one association's rows as they stand at one moment; a write inside is refused. */
  read<T>(associationId: string, work: Work<T>): Promise<T> {
    return this.transaction({ associationId }, work, { writes: false });
  }

  /** For look-ups that must happen before the association is known (signing in, a feed's token), or that set several. */
  runWith<T>(settings: SessionSettings, work: Work<T>, options?: TransactionOptions): Promise<T> {
    return this.transaction(settings, work, { writes: true, ...options });
  }

  /** As `runWith`, for reading only. */
  readWith<T>(settings: SessionSettings, work: Work<T>): Promise<T> {
    return this.transaction(settings, work, { writes: false });
  }

  private async transaction<T>(
    settings: SessionSettings,
    work: Work<T>,
    options: TransactionOptions & { writes: boolean },
  ): Promise<T> {
    const stated = statedSettings(settings);
    for (let attempt = 1; ; attempt += 1) {
      try {
        return await this.dataSource.transaction(async (tx) => {
          if (!options.writes) await tx.query('set transaction isolation level repeatable read, read only');
          for (const [name, value] of stated)
            await tx.query('select set_config($1, $2, true)', [name, value]);
          return work(tx);
        });
      } catch (error) {
        if (options.repeatable !== true || attempt === attemptsMax || !isLostRace(error)) throw error;
        await pause(randomInt(10, 40) * 2 ** attempt);
      }
    }
  }
}

function statedSettings(settings: SessionSettings): [name: string, value: string][] {
  return (Object.keys(settingNames) as (keyof SessionSettings)[]).flatMap((key) => {
    const value = settings[key];
    if (value === undefined) return [];
    if (!formats[key].test(value)) throw new Error(`${key} is malformed.`);
    return [[settingNames[key], value] as [string, string]];
  });
}

/** Serialization failure (40001) or deadlock (40P01): the other transaction won, and trying again may well succeed. */
function isLostRace(error: unknown): boolean {
  const code = error instanceof QueryFailedError ? (error.driverError as { code?: string }).code : undefined;
  return code === '40001' || code === '40P01';
}
