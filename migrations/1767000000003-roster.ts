import type { MigrationInterface, QueryRunner } from 'typeorm';
import { behindItsAssociation, forApplication } from './tenant-table';

/** Officials and when they are free. */
export class Roster1767000000003 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      create table official (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        number text not null check (number <> ''),
        given_name text not null check (given_name <> ''),
        family_name text not null check (family_name <> ''),
        level smallint not null,
        may_be_chief boolean not null,
        birth_date date,
        guardian_name text not null default '',
        guardian_contact text not null default '',
        home_place_id uuid,
        home_address text not null default '',
        max_home_minutes integer not null check (max_home_minutes >= 0),
        max_games_per_day integer not null check (max_games_per_day >= 0),
        max_games_per_slate integer not null check (max_games_per_slate >= 0),
        wished_games_per_slate double precision check (wished_games_per_slate >= 0),
        email text,
        phone text not null default '',
        share_phone_with_crew boolean not null default true,
        languages text[] not null default '{}',
        certificate_expires_on date,
        active boolean not null default true,
        version integer not null default 1,
        primary key (association_id, id),
        unique (association_id, number),
        foreign key (association_id, level) references level_step (association_id, level),
        foreign key (association_id, home_place_id) references place (association_id, id)
      );

      alter table membership add constraint membership_official
        foreign key (association_id, official_id) references official (association_id, id);

      create table availability_rule (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        official_id uuid not null,
        kind text not null check (kind in ('available', 'busy', 'reluctant')),
        local_date date not null,
        local_time time not null,
        duration_minutes integer not null check (duration_minutes between 1 and 44640),
        time_zone text not null,
        recurrence text check (recurrence <> ''),
        except_dates date[] not null default '{}',
        priority smallint not null default 0 check (priority between 0 and 9),
        source text not null check (source in ('official', 'assignor', 'import', 'calendar')),
        note text not null default '',
        version integer not null default 1,
        primary key (association_id, id),
        foreign key (association_id, official_id) references official (association_id, id) on delete cascade
      );
      create index availability_rule_by_official on availability_rule (association_id, official_id);
      -- The same line brought in twice is one line.
      create unique index availability_rule_once on availability_rule
        (association_id, official_id, kind, local_date, local_time, duration_minutes, time_zone, coalesce(recurrence, ''));

      ${['official', 'availability_rule'].map((table) => behindItsAssociation(table)).join('')}
      ${forApplication('official', 'availability_rule')}
    `);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`
      alter table membership drop constraint membership_official;
      drop table availability_rule, official cascade;
    `);
  }
}
