import { Access1767000000001 } from './1767000000001-access';
import { Places1767000000002 } from './1767000000002-places';
import { Roster1767000000003 } from './1767000000003-roster';
import { Games1767000000004 } from './1767000000004-games';
import { Slates1767000000005 } from './1767000000005-slates';
import { CalendarAndSeason1767000000006 } from './1767000000006-calendar-and-season';

/** Every migration, oldest first. A merged migration is never edited or renamed; changes come as new ones. */
export const migrations = [
  Access1767000000001,
  Places1767000000002,
  Roster1767000000003,
  Games1767000000004,
  Slates1767000000005,
  CalendarAndSeason1767000000006,
];
