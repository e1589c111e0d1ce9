import type { MigrationInterface, QueryRunner } from 'typeorm';
import { behindItsAssociation, forApplication } from './tenant-table';

/** Positions, venues with their courts and safety notes, and travel legs between positions. */
export class Places1767000000002 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query(`
      create table place (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        latitude double precision not null check (latitude between -90 and 90),
        longitude double precision not null check (longitude between -180 and 180),
        primary key (association_id, id)
      );

      create table venue (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        code text not null check (code <> ''),
        name text not null check (name <> ''),
        address text not null default '',
        town text not null default '',
        place_id uuid,
        time_zone text not null,
        entrance text not null default '',
        changing_room text not null default '',
        table_side text not null default '',
        parking text not null default '',
        hazards text not null default '',
        emergency_address text not null default '',
        defibrillator text not null default '',
        first_aid text not null default '',
        nearest_hospital text not null default '',
        active boolean not null default true,
        version integer not null default 1,
        primary key (association_id, id),
        unique (association_id, code),
        foreign key (association_id, place_id) references place (association_id, id)
      );

      create table court (
        association_id uuid not null references association (id) on delete cascade,
        id uuid not null,
        venue_id uuid not null,
        name text not null check (name <> ''),
        primary key (association_id, id),
        unique (association_id, venue_id, name),
        unique (association_id, venue_id, id),
        foreign key (association_id, venue_id) references venue (association_id, id) on delete cascade
      );

      create table travel_leg (
        association_id uuid not null references association (id) on delete cascade,
        from_place_id uuid not null,
        to_place_id uuid not null,
        minutes integer not null check (minutes >= 0),
        metres integer not null check (metres >= 0),
        source text not null check (source in ('measured', 'estimated')),
        model text not null default '',
        noted_at timestamptz not null default now(),
        primary key (association_id, from_place_id, to_place_id, source),
        foreign key (association_id, from_place_id) references place (association_id, id) on delete cascade,
        foreign key (association_id, to_place_id) references place (association_id, id) on delete cascade,
        check (from_place_id <> to_place_id)
      );

      ${['place', 'venue', 'court', 'travel_leg'].map((table) => behindItsAssociation(table)).join('')}
      ${forApplication('place', 'venue', 'court', 'travel_leg')}
    `);
  }

  async down(db: QueryRunner): Promise<void> {
    await db.query(`drop table travel_leg, court, venue, place cascade`);
  }
}
