import { QueryFailedError, type EntityManager } from 'typeorm';

const guards: Readonly<Record<string, string>> = {
  assignment_one_game_at_once: 'Somebody would work two games at once.',
  assignment_one_venue_at_once: 'Somebody would be due in two buildings at once.',
  assignment_one_a_game: 'Somebody would hold both seats of one game.',
  assignment_one_a_seat: 'Two people would be told of the same seat.',
};

/** What one of the database's guards on assignments objects to, in a sentence; null for any other error. */
export function guardObjection(error: unknown): string | null {
  if (!(error instanceof QueryFailedError)) return null;
  const { constraint } = error.driverError as { constraint?: string };
  return constraint === undefined ? null : (guards[constraint] ?? null);
}

/**
 * Everybody in a slate's working copy who has been told of another game in the way of one of theirs, a sentence
 * each. The database itself names nobody: behind row-level security its errors keep their keys to themselves.
 */
export async function peopleToldElsewhere(
  tx: EntityManager,
  associationId: string,
  slateId: string,
): Promise<string[]> {
  const rows = await tx.query<{ name: string; wanted: string; told: string }[]>(
    `select distinct o.given_name || ' ' || o.family_name as name, g.number as wanted, other.number as told
       from slate_game l
       join seat s on s.association_id = l.association_id and s.game_id = l.game_id
       join game g on g.association_id = l.association_id and g.id = l.game_id and g.status <> 'CANCELLED'
       join official o on o.association_id = l.association_id and o.id = s.official_id
       join association c on c.id = l.association_id
       join assignment a on a.association_id = l.association_id and a.official_id = s.official_id
        and a.ended_at is null and a.game_id <> g.id
       join game other on other.association_id = a.association_id and other.id = a.game_id
       cross join lateral (
         select g.starts_at + make_interval(mins => g.duration_minutes) as ends_at,
                make_interval(mins => (c.policy ->> 'arrivalLeadMinutes')::int) as lead,
                make_interval(mins => (c.policy ->> 'wrapUpMinutes')::int) as wrap_up) d
      where l.association_id = $1 and l.slate_id = $2
        and (tstzrange(g.starts_at, d.ends_at) && tstzrange(a.starts_at, a.ends_at)
          or a.venue_id <> g.venue_id
         and tstzrange(g.starts_at - d.lead, d.ends_at + d.wrap_up) && tstzrange(a.duty_starts_at, a.duty_ends_at))
      order by name, wanted, told`,
    [associationId, slateId],
  );
  return rows.map(
    ({ name, wanted, told }) => `${name} cannot work ${wanted}: has been told of ${told} at that time.`,
  );
}
