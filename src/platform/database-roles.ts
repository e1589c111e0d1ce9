import { DatabaseError, escapeIdentifier, type ClientBase } from 'pg';

/** Role under which every request and job runs; row-level security binds it. */
export const applicationRole = 'crewloom_app';

/**
 * Creates the application role when the server has none, and lets the owner act as it.
 *
 * @throws when a role of that name exists that could step around row-level security
 */
export async function prepareApplicationRole(owner: ClientBase): Promise<void> {
  const { rowCount } = await owner.query('select 1 from pg_roles where rolname = $1', [applicationRole]);
  if (rowCount === 0) {
    await owner.query(`create role ${applicationRole} nologin`).catch(ignoreIfDoneByAnother);
  }
  const { rows } = await owner.query<{ bypasses: boolean; is_member: boolean }>(
    // Since Postgres 16 a member may act as a role only with the SET option, which its creator does not get by itself.
    `select r.rolsuper or r.rolbypassrls as bypasses,
            pg_has_role(current_user, r.oid,
              case when current_setting('server_version_num')::int >= 160000 then 'set' else 'member' end) as is_member
       from pg_roles r where r.rolname = $1`,
    [applicationRole],
  );
  if (rows[0]?.bypasses !== false) {
    throw new Error(`Role ${applicationRole} must be neither superuser nor BYPASSRLS.`);
  }
  if (!rows[0].is_member) {
    const { rows: names } = await owner.query<{ name: string }>('select current_user as name');
    const name = escapeIdentifier(names[0]?.name ?? '');
    await owner.query(`grant ${applicationRole} to ${name}`).catch(ignoreIfDoneByAnother);
  }
}

/** Roles belong to the whole server, so two databases of one server may be prepared at the same moment. */
function ignoreIfDoneByAnother(error: unknown): void {
  const codes = ['42710', '23505', 'XX000'];
  if (!(error instanceof DatabaseError && codes.includes(error.code ?? ''))) throw error;
}
