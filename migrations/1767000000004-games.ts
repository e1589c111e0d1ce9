import type { MigrationInterface, QueryRunner } from 'typeorm';
import { behindItsAssociation, forApplication } from './tenant-table';

/** Divisions, teams, games, and the conflicts of officials with teams, venues and each other. */
export class Games1767000000004 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      create table division (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        code text not null check (code <> ''),
        name text not null check (name <> ''),
        chief_min_level smallint not null,
        umpire_min_level smallint not null,
        chief_target_level smallint not null,
        umpire_target_level smallint not null,
        pairing_cost double precision[] not null check (cardinality(pairing_cost) > 0 and 0 <= all (pairing_cost)),
        game_minutes integer not null check (game_minutes >= 1),
        priority double precision not null default 1 check (priority > 0),
        playing_rules jsonb not null,
        fee_chief_minor_units integer not null default 0 check (fee_chief_minor_units >= 0),
        fee_umpire_minor_units integer not null default 0 check (fee_umpire_minor_units >= 0),
        version integer not null default 1,
        primary key (association_id, id),
        unique (association_id, code)
      );

      create table team (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        code text not null check (code <> ''),
        name text not null check (name <> ''),
        division_id uuid,
        home_colour text not null default '',
        away_colour text not null default '',
        active boolean not null default true,
        version integer not null default 1,
        primary key (association_id, id),
        unique (association_id, code),
        foreign key (association_id, division_id) references division (association_id, id)
      );

      create table game (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        number text not null check (number <> ''),
        division_id uuid not null,
        venue_id uuid not null,
        court_id uuid,
        local_date date not null,
        local_time time not null,
        time_zone text not null,
        zone_data_version text not null default '',
        starts_at timestamptz not null,
        duration_minutes integer not null check (duration_minutes >= 1),
        home_team_id uuid not null,
        away_team_id uuid not null,
        priority double precision not null default 1 check (priority > 0),
        status text not null default 'CONFIRMED' check (status in ('TENTATIVE', 'CONFIRMED', 'CANCELLED')),
        note text not null default '',
        version integer not null default 1,
        updated_at timestamptz not null default now(),
        primary key (association_id, id),
        unique (association_id, number),
        foreign key (association_id, division_id) references division (association_id, id),
        foreign key (association_id, venue_id) references venue (association_id, id),
        foreign key (association_id, venue_id, court_id) references court (association_id, venue_id, id),
        foreign key (association_id, home_team_id) references team (association_id, id),
        foreign key (association_id, away_team_id) references team (association_id, id),
        check (home_team_id <> away_team_id)
      );
      create index game_by_start on game (association_id, starts_at);

      create table conflict (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        official_id uuid not null,
        team_id uuid,
        venue_id uuid,
        other_official_id uuid,
        reason text not null default '',
        since date,
        until date,
        primary key (association_id, id),
        foreign key (association_id, official_id) references official (association_id, id) on delete cascade,
        foreign key (association_id, team_id) references team (association_id, id) on delete cascade,
        foreign key (association_id, venue_id) references venue (association_id, id) on delete cascade,
        foreign key (association_id, other_official_id) references official (association_id, id) on delete cascade,
        check (num_nonnulls(team_id, venue_id, other_official_id) = 1),
        check (other_official_id <> official_id),
        check (since <= until)
      );
      create unique index conflict_once on conflict
        (association_id, official_id, team_id, venue_id, other_official_id, since) nulls not distinct;

      ${['division', 'team', 'game', 'conflict'].map((table) => behindItsAssociation(table)).join('')}
      ${forApplication('division', 'team', 'game', 'conflict')}
    `);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`drop table conflict, game, team, division cascade`);
  }
}
