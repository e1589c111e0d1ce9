import type { MigrationInterface, QueryRunner } from 'typeorm';
import { behindItsAssociation, forApplication } from './tenant-table';

/** Slates: working seats, builds and proposals, publications and the assignments they made. */
export class Slates1767000000005 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      create table slate (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        name text not null check (name <> ''),
        from_date date not null,
        to_date date not null check (to_date >= from_date),
        weights jsonb,
        chosen_proposal_id uuid,
        version integer not null default 1,
        created_at timestamptz not null default now(),
        primary key (association_id, id),
        unique (association_id, name)
      );
      create index slate_by_date on slate (association_id, from_date);

      create table slate_game (
        association_id uuid not null references association (id) on delete cascade,
        slate_id uuid not null,
        game_id uuid not null,
        primary key (association_id, slate_id, game_id),
        unique (association_id, game_id),
        foreign key (association_id, slate_id) references slate (association_id, id) on delete cascade,
        foreign key (association_id, game_id) references game (association_id, id) on delete cascade
      );

      -- The assignor's working copy: who is meant to sit where, before anybody is told.
      create table seat (
        association_id uuid not null references association (id) on delete cascade,
        game_id uuid not null,
        seat text not null check (seat in ('chief', 'umpire')),
        official_id uuid,
        locked boolean not null default false,
        version integer not null default 1,
        primary key (association_id, game_id, seat),
        foreign key (association_id, game_id) references game (association_id, id) on delete cascade,
        foreign key (association_id, official_id) references official (association_id, id)
      );
      create unique index seat_one_a_game on seat (association_id, game_id, official_id) where official_id is not null;

      create table build (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        slate_id uuid not null,
        label text not null default '',
        state text not null check (state in ('waiting', 'solving', 'done', 'failed')),
        seed integer not null,
        seconds_limit double precision not null check (seconds_limit > 0),
        weights jsonb not null,
        slate_version integer not null,
        progress jsonb,
        stop_requested_at timestamptz,
        requested_by uuid,
        requested_at timestamptz not null,
        started_at timestamptz,
        finished_at timestamptz,
        fault text,
        primary key (association_id, id),
        foreign key (association_id, slate_id) references slate (association_id, id) on delete cascade
      );
      create index build_by_slate on build (association_id, slate_id, requested_at);

      create table proposal (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        slate_id uuid not null,
        build_id uuid not null,
        label text not null default '',
        problem jsonb not null,
        answer jsonb not null,
        status text not null check (status in ('optimal', 'feasible')),
        total_cost double precision not null,
        bound double precision check (bound <= total_cost + 1e-6 * greatest(1, abs(total_cost))),
        open_seats integer not null check (open_seats >= 0),
        seed integer not null,
        seconds double precision not null,
        weights jsonb not null,
        slate_version integer not null,
        created_at timestamptz not null,
        primary key (association_id, id),
        unique (association_id, build_id),
        foreign key (association_id, slate_id) references slate (association_id, id) on delete cascade,
        foreign key (association_id, build_id) references build (association_id, id) on delete cascade
      );
      alter table slate add constraint slate_chosen_proposal
        foreign key (association_id, chosen_proposal_id) references proposal (association_id, id);

      create table publication (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        slate_id uuid not null,
        number integer not null check (number >= 1),
        idempotency_key text not null,
        proposal_id uuid,
        changes jsonb not null,
        published_by uuid,
        published_at timestamptz not null,
        primary key (association_id, id),
        unique (association_id, slate_id, number),
        unique (association_id, idempotency_key),
        foreign key (association_id, slate_id) references slate (association_id, id),
        foreign key (association_id, proposal_id) references proposal (association_id, id)
      );

      -- What an official has been told: one row for a person, a game and a seat, from publication until it
      -- ends. The game is repeated as it was shown, because replies are bound to what was shown.
      create table assignment (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        uid uuid not null,
        sequence integer not null default 0 check (sequence between 0 and 2147483646),
        publication_id uuid,
        game_id uuid not null,
        seat text not null check (seat in ('chief', 'umpire')),
        official_id uuid not null,
        venue_id uuid not null,
        starts_at timestamptz not null,
        ends_at timestamptz not null check (ends_at > starts_at),
        duty_starts_at timestamptz not null check (duty_starts_at <= starts_at),
        duty_ends_at timestamptz not null check (duty_ends_at >= ends_at),
        reply text not null default 'NEEDS-ACTION' check (reply in ('NEEDS-ACTION', 'ACCEPTED', 'DECLINED')),
        replied_at timestamptz,
        reply_reason text not null default '',
        end_reason text check (end_reason in ('replaced', 'declined', 'withdrawn', 'game-cancelled')),
        ended_at timestamptz,
        created_at timestamptz not null,
        revised_at timestamptz not null,
        primary key (association_id, id),
        unique (association_id, uid),
        foreign key (association_id, publication_id) references publication (association_id, id),
        foreign key (association_id, game_id) references game (association_id, id),
        foreign key (association_id, official_id) references official (association_id, id),
        foreign key (association_id, venue_id) references venue (association_id, id),
        check ((end_reason is null) = (ended_at is null)),
        -- Nobody works two games at once, and nobody is due in two buildings at once. Two duties in the
        -- same building may touch: who is already there need not arrive again.
        constraint assignment_one_game_at_once exclude using gist (
          association_id with =, official_id with =, tstzrange(starts_at, ends_at) with &&
        ) where (ended_at is null),
        constraint assignment_one_venue_at_once exclude using gist (
          association_id with =, official_id with =, venue_id with <>, tstzrange(duty_starts_at, duty_ends_at) with &&
        ) where (ended_at is null)
      );
      create unique index assignment_one_a_seat on assignment (association_id, game_id, seat) where ended_at is null;
      create unique index assignment_one_a_game on assignment (association_id, game_id, official_id) where ended_at is null;
      create index assignment_by_official on assignment (association_id, official_id, starts_at);

      ${['slate', 'slate_game', 'seat', 'build', 'proposal', 'publication', 'assignment'].map((table) => behindItsAssociation(table)).join('')}
      ${forApplication('slate', 'slate_game', 'seat', 'build', 'proposal', 'publication', 'assignment')}
    `);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      alter table slate drop constraint slate_chosen_proposal;
      drop table assignment, publication, proposal, build, seat, slate_game, slate cascade;
    `);
  }
}
