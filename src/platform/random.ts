import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { link, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** A secret for one bearer and what the database keeps of it. */
export interface Token {
  /** 43 characters of base64url, 256 random bits; shown once and never stored. */
  readonly secret: string;
  /** SHA-256 of `secret`, hexadecimal. */
  readonly hash: string;
}

/** Where secrets come from; tests may put a predictable source in its place. */
export type TokenSource = () => Token;

/** Under this name a service asks for them: `@Inject(tokenSourceToken) newToken: TokenSource`. */
export const tokenSourceToken = Symbol('token source');

export const newToken: TokenSource = () => {
  const secret = randomBytes(32).toString('base64url');
  return { secret, hash: tokenHash(secret) };
};

/** SHA-256, hexadecimal. A plain hash will do: what is hashed has 256 random bits and cannot be guessed. */
export function tokenHash(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

/** Compares two texts in a time that tells nothing about where they differ. */
export function isSameSecret(left: string, right: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(left), digest(right));
}

/**
 * A secret of this installation: made at first use and kept in the data folder, readable by its owner only.
 *
 * @param name file name, such as `session-secret`
 */
export async function installationSecret(dataDirectory: string, name: string): Promise<string> {
  const path = join(dataDirectory, name);
  const existing = await readSecret(path);
  if (existing !== null) return existing;
  await mkdir(dataDirectory, { recursive: true });
  const draft = `${path}.${newToken().hash.slice(0, 8)}`;
  try {
    await writeFile(draft, randomBytes(48).toString('base64url'), { mode: 0o600 });
    // Linking is one step and never replaces: of two processes that start at once both end with the same secret.
    await link(draft, path).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
  } finally {
    await rm(draft, { force: true });
  }
  const secret = await readSecret(path);
  if (secret === null) throw new Error(`${path} does not hold a secret; remove it and start again.`);
  return secret;
}

async function readSecret(path: string): Promise<string | null> {
  try {
    const text = await readFile(path, 'utf8');
    return text.length >= 32 ? text : null;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    return null;
  }
}
