/**
 * SQL that puts a table behind its association: row-level security is enabled and forced, and the one
 * policy lets a statement see and write only rows of the association that the transaction has named in
 * `crewloom.association_id`. `orVisibleWhen` widens reading, never writing, for the few look-ups that must
 * happen before the association is known (a session or a feed token presented by its bearer).
 */
export function behindItsAssociation(table: string, orVisibleWhen?: string): string {
  const own = `association_id = nullif(current_setting('crewloom.association_id', true), '')::uuid`;
  return `
    alter table ${table} enable row level security;
    alter table ${table} force row level security;
    create policy own_association on ${table} using (${own}) with check (${own});
    ${orVisibleWhen === undefined ? '' : `create policy bearer on ${table} for select using (${orVisibleWhen});`}
  `;
}

/** Grants of the application role on tables it may read and change. */
export function forApplication(...tables: readonly string[]): string {
  return `grant select, insert, update, delete on ${tables.join(', ')} to crewloom_app;`;
}
