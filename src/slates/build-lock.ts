import type { DataSource } from 'typeorm';

/**
 * Does the work while no other process does work on the same build. The lock belongs to a database session: it
 * falls by itself when the process dies, however it dies, so that "is anybody still at it?" always has an answer.
 *
 * @returns `busy` when somebody else is at it
 */
export async function withBuildLock<T>(
  dataSource: DataSource,
  buildId: string,
  work: () => Promise<T>,
): Promise<T | 'busy'> {
  const session = dataSource.createQueryRunner();
  await session.connect();
  try {
    const key = `slate-build ${buildId}`;
    const rows = (await session.query('select pg_try_advisory_lock(hashtextextended($1, 0)) as taken', [
      key,
    ])) as { taken: boolean }[];
    if (rows[0]?.taken !== true) return 'busy';
    try {
      return await work();
    } finally {
      await session.query('select pg_advisory_unlock(hashtextextended($1, 0))', [key]);
    }
  } finally {
    await session.release();
  }
}
