import type { MigrationInterface, QueryRunner } from 'typeorm';
import { behindItsAssociation, forApplication } from './tenant-table';

/** Associations, their ladders of levels, accounts, sessions, memberships and the audit trail. */
export class Access1767000000001 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      create extension if not exists btree_gist;

      create table association (
        id uuid primary key,
        slug text not null unique check (slug ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
        name text not null check (name <> ''),
        time_zone text not null,
        language text not null default 'en-GB',
        date_format text not null default 'yyyy-MM-dd',
        currency char(3) not null check (currency ~ '^[A-Z]{3}$'),
        emergency_number text not null,
        reply_address text,
        policy jsonb not null,
        weights jsonb not null,
        travel_model jsonb not null,
        version integer not null default 1,
        created_at timestamptz not null default now(),
        updated_at timestamptz not null default now()
      );

      create table level_step (
        association_id uuid not null references association (id) on delete cascade,
        level smallint not null,
        name text not null check (name <> ''),
        primary key (association_id, level),
        unique (association_id, name)
      );

      create table account (
        id uuid primary key,
        email text not null unique check (email = lower(email) and position('@' in email) > 1),
        display_name text not null,
        created_at timestamptz not null default now(),
        disabled_at timestamptz
      );

      create table sign_in_link (
        token_hash bytea primary key check (length(token_hash) = 32),
        account_id uuid not null references account (id) on delete cascade,
        created_at timestamptz not null,
        expires_at timestamptz not null check (expires_at > created_at),
        used_at timestamptz
      );

      create table session (
        token_hash bytea primary key check (length(token_hash) = 32),
        account_id uuid not null references account (id) on delete cascade,
        device_label text not null default '',
        created_at timestamptz not null,
        last_seen_at timestamptz not null,
        expires_at timestamptz not null check (expires_at > created_at),
        revoked_at timestamptz
      );
      create index session_by_account on session (account_id);

      create table membership (
        association_id uuid not null references association (id) on delete cascade,
        account_id uuid not null references account (id) on delete cascade,
        roles text[] not null check (
          roles <@ array['administrator', 'assignor', 'observer', 'treasurer', 'official'] and cardinality(roles) > 0
        ),
        official_id uuid,
        created_at timestamptz not null default now(),
        primary key (association_id, account_id),
        unique (association_id, official_id),
        check (('official' = any (roles)) = (official_id is not null))
      );
      create index membership_by_account on membership (account_id);

      create table audit_entry (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        at timestamptz not null,
        account_id uuid,
        action text not null,
        object_kind text not null,
        object_id text not null,
        before jsonb,
        after jsonb,
        primary key (association_id, id)
      );
      create index audit_entry_by_object on audit_entry (association_id, object_kind, object_id, at);

      ${behindItsAssociation('level_step')}
      ${behindItsAssociation(
        'membership',
        `account_id = nullif(current_setting('crewloom.account_id', true), '')::uuid`,
      )}
      ${behindItsAssociation('audit_entry')}

      -- Not forced on its owner, so that association_ids() below can name the tenants that have work waiting.
      alter table association enable row level security;
      create policy own_association on association
        using (id = nullif(current_setting('crewloom.association_id', true), '')::uuid)
        with check (id = nullif(current_setting('crewloom.association_id', true), '')::uuid);
      create policy member on association for select using (exists (
        select 1 from membership m
        where m.association_id = association.id
          and m.account_id = nullif(current_setting('crewloom.account_id', true), '')::uuid
      ));

      -- People sign in before an association is known: each row opens only to who presents its secret,
      -- its account, its address, or (accounts) shares the association at hand.
      alter table account enable row level security;
      alter table account force row level security;
      create policy self on account
        using (
          id = nullif(current_setting('crewloom.account_id', true), '')::uuid
          or email = nullif(current_setting('crewloom.account_email', true), '')
        )
        with check (
          id = nullif(current_setting('crewloom.account_id', true), '')::uuid
          or email = nullif(current_setting('crewloom.account_email', true), '')
        );
      create policy fellow_member on account for select using (exists (
        select 1 from membership m
        where m.account_id = account.id
          and m.association_id = nullif(current_setting('crewloom.association_id', true), '')::uuid
      ));

      alter table sign_in_link enable row level security;
      alter table sign_in_link force row level security;
      create policy bearer on sign_in_link
        using (
          token_hash = decode(nullif(current_setting('crewloom.link_hash', true), ''), 'hex')
          or account_id = nullif(current_setting('crewloom.account_id', true), '')::uuid
        )
        with check (account_id = nullif(current_setting('crewloom.account_id', true), '')::uuid
          or token_hash = decode(nullif(current_setting('crewloom.link_hash', true), ''), 'hex'));

      alter table session enable row level security;
      alter table session force row level security;
      create policy bearer on session
        using (
          token_hash = decode(nullif(current_setting('crewloom.session_hash', true), ''), 'hex')
          or account_id = nullif(current_setting('crewloom.account_id', true), '')::uuid
        )
        with check (
          token_hash = decode(nullif(current_setting('crewloom.session_hash', true), ''), 'hex')
          or account_id = nullif(current_setting('crewloom.account_id', true), '')::uuid
        );

      -- Timed jobs must visit every association: they may learn the ids, and nothing else.
      create function association_ids() returns setof uuid language sql stable security definer
        set search_path = public, pg_temp as 'select id from association order by id';
      revoke all on function association_ids() from public;
      grant execute on function association_ids() to crewloom_app;

      ${forApplication('level_step', 'membership', 'account', 'sign_in_link', 'session')}
      grant select, insert, update on association to crewloom_app;
      -- What was done stays written: the application can add to the trail, never change it.
      grant select, insert on audit_entry to crewloom_app;
    `);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      drop function association_ids();
      drop table audit_entry, membership, session, sign_in_link, level_step, account cascade;
      drop table association cascade;
    `);
  }
}
