// Goal: secrets are long, different, and stored only as a hash; the installation's own secret is made once.
import { mkdtemp, readdir, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { installationSecret, isSameSecret, newToken, tokenHash } from '../../../src/platform/random';

test('a token has 256 bits in an alphabet fit for addresses', () => {
  const secrets = new Set(Array.from({ length: 1000 }, () => newToken().secret));
  expect(secrets.size).toBe(1000);
  for (const secret of secrets) expect(secret).toMatch(/^[A-Za-z0-9_-]{43}$/);
});

test('its hash is SHA-256', () => {
  // FIPS 180-2, appendix B.1.
  expect(tokenHash('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  const { secret, hash } = newToken();
  expect(tokenHash(secret)).toBe(hash);
});

test('secrets are compared as a whole', () => {
  expect(isSameSecret('abc', 'abc')).toBe(true);
  expect(isSameSecret('abc', 'abd')).toBe(false);
  expect(isSameSecret('abc', 'abcd')).toBe(false);
});

describe('the secret of the installation', () => {
  let folder: string;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'crewloom-secret-'));
  });
  afterEach(() => rm(folder, { recursive: true }));

  test('is the same for many that ask at once, readable by its owner only, and leaves nothing else', async () => {
    const data = join(folder, 'new');
    const answers = await Promise.all(Array.from({ length: 20 }, () => installationSecret(data, 'key')));
    expect(new Set(answers).size).toBe(1);
    expect(answers[0]).toMatch(/^[A-Za-z0-9_-]{64}$/);
    expect(await installationSecret(data, 'key')).toBe(answers[0]);
    expect((await stat(join(data, 'key'))).mode & 0o777).toBe(0o600);
    expect(await readdir(data)).toEqual(['key']);
  });

  test('is not replaced silently when the file is damaged', async () => {
    await writeFile(join(folder, 'key'), 'short');
    await expect(installationSecret(folder, 'key')).rejects.toThrow(/does not hold a secret/);
  });
});
