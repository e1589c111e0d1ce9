import type { MigrationInterface, QueryRunner } from 'typeorm';
import { behindItsAssociation, forApplication } from './tenant-table';

/** Feed tokens, the outbox, and what is written after a game. */
export class CalendarAndSeason1767000000006 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      create table feed_token (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        official_id uuid not null,
        token_hash bytea not null check (length(token_hash) = 32),
        name text not null default '',
        created_at timestamptz not null,
        revoked_at timestamptz,
        last_used_at timestamptz,
        last_user_agent text not null default '',
        primary key (association_id, id),
        unique (association_id, token_hash),
        foreign key (association_id, official_id) references official (association_id, id) on delete cascade
      );
      create index feed_token_by_hash on feed_token (token_hash);
      create index feed_token_by_official on feed_token (association_id, official_id);

      -- Counts every change that an official's feed would show, events that leave it included.
      create table feed_revision (
        association_id uuid not null references association (id) on delete cascade,
        official_id uuid not null,
        revision bigint not null default 1,
        changed_at timestamptz not null,
        primary key (association_id, official_id),
        foreign key (association_id, official_id) references official (association_id, id) on delete cascade
      );

      create table outbox_message (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        dedupe_key text not null,
        kind text not null check (kind in ('assigned', 'changed', 'ended', 'reminder', 'sign-in')),
        official_id uuid,
        assignment_id uuid,
        sequence integer,
        payload jsonb not null default '{}',
        created_at timestamptz not null,
        next_try_at timestamptz not null,
        leased_until timestamptz,
        attempts integer not null default 0 check (attempts >= 0),
        sent_at timestamptz,
        superseded_at timestamptz,
        dead_at timestamptz,
        last_fault text,
        primary key (association_id, id),
        unique (association_id, dedupe_key),
        foreign key (association_id, official_id) references official (association_id, id) on delete cascade,
        foreign key (association_id, assignment_id) references assignment (association_id, id) on delete cascade
      );
      create index outbox_message_due on outbox_message (association_id, next_try_at)
        where sent_at is null and superseded_at is null and dead_at is null;

      create table game_report (
        association_id uuid not null references association (id) on delete cascade,
        game_id uuid not null,
        played text not null check (played in ('as-planned', 'changed', 'not-played')),
        home_score integer check (home_score >= 0),
        away_score integer check (away_score >= 0),
        late_start_minutes integer not null default 0 check (late_start_minutes >= 0),
        incidents text not null default '',
        absent text not null default '',
        filed_by_official_id uuid not null,
        filed_at timestamptz not null,
        primary key (association_id, game_id),
        foreign key (association_id, game_id) references game (association_id, id),
        foreign key (association_id, filed_by_official_id) references official (association_id, id)
      );

      create table reflection (
        association_id uuid not null references association (id) on delete cascade,
        game_id uuid not null,
        official_id uuid not null,
        kept_first text not null default '',
        kept_second text not null default '',
        to_change text not null default '',
        question text not null default '',
        shared_with_mentor boolean not null default false,
        written_at timestamptz not null,
        primary key (association_id, game_id, official_id),
        foreign key (association_id, game_id) references game (association_id, id),
        foreign key (association_id, official_id) references official (association_id, id) on delete cascade
      );

      create table observation (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        game_id uuid not null,
        official_id uuid not null,
        observer_account_id uuid not null,
        strengths text not null default '',
        one_thing text not null default '',
        suggested_level smallint,
        observed_at timestamptz not null,
        primary key (association_id, id),
        unique (association_id, game_id, official_id, observer_account_id),
        foreign key (association_id, game_id) references game (association_id, id),
        foreign key (association_id, official_id) references official (association_id, id) on delete cascade,
        foreign key (association_id, observer_account_id) references membership (association_id, account_id),
        foreign key (association_id, suggested_level) references level_step (association_id, level)
      );

      ${behindItsAssociation(
        'feed_token',
        `token_hash = decode(nullif(current_setting('crewloom.feed_hash', true), ''), 'hex')`,
      )}
      ${['feed_revision', 'outbox_message', 'game_report', 'reflection', 'observation'].map((table) => behindItsAssociation(table)).join('')}
      ${forApplication('feed_token', 'feed_revision', 'outbox_message', 'game_report', 'reflection', 'observation')}
    `);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(
      `drop table observation, reflection, game_report, outbox_message, feed_revision, feed_token cascade`,
    );
  }
}
